import type { Spoken } from './asked.ts';

const PROMPTS = {
  majors: 'Does one major key own every chord, or several?',
  relatives: 'Does one key own every chord, or several?',
  modes: 'Does one scale own every chord, or several?',
} as const;

export const oneOrSeveralSpoken: Spoken = {
  prompt: ({ options: [policy] = [] }) =>
    policy === 'majors' || policy === 'modes' ? PROMPTS[policy] : PROMPTS.relatives,
  instruction: ({ options: [policy] = [] }) =>
    policy === 'modes' ? 'Whichever chord is home, a scale counts once.' : 'A major and its relative minor are one.',
};

export const oneOrSeveralAnswers = { one: 'one key', several: 'several keys' } as const;
