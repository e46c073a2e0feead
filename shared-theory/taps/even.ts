/** Unevenness of intervals, as a part of the middle one, up to which taps are even: common practice. */
export const EVEN = 0.04;
