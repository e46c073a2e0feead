import type { ErrorWords } from './error-words.ts';

/** What a class mishears of the groove, and how it taps, by error kind. */
export const rhythmErrors: Readonly<Record<string, ErrorWords>> = {
  'hears-down-up-where-all-are-down': {
    finding: 'All downs are heard as down and up.',
    say: 'Every stroke bites the same: all downs.',
    play: 'Driving eighths, then the relaxed alternate, on one chord.',
  },
  'hears-all-downs-where-they-alternate': {
    finding: 'Down and up is heard as all downs.',
    say: 'Every second stroke is thinner. That is the up.',
    play: 'The relaxed alternate, slower, then driving eighths, on one chord.',
  },
  'taps-twice-as-fast': {
    finding: 'The taps go twice as fast as the numbers.',
    say: 'You tap the steps between as well. On which of them would your foot come down?',
    play: 'The kit only, then full, with the numbers counted aloud.',
  },
  'taps-half-as-fast': {
    finding: 'Every second number goes untapped.',
    say: 'Your foot is calm and true. Now tap once more between its steps.',
    play: 'Muted strings, slower, with every number counted aloud.',
  },
  'taps-three-against-two': {
    finding: 'Threes are tapped against twos.',
    say: 'Let the fingers rest and the foot decide.',
    play: 'The bass alone, everyone stepping on the big beats, then full.',
  },
  rushes: {
    finding: 'The taps run ahead as they go on.',
    say: 'Nobody is behind you. Leave the silence its length.',
    play: 'Two bars out, with the claps going on softly: see where you land.',
  },
  drags: {
    finding: 'The taps fall back as they go on.',
    say: 'Hear the next number before you tap it.',
    play: 'The kit only, with the numbers counted aloud, then two bars out.',
  },
  'taps-unevenly': {
    finding: 'The taps do not lie evenly.',
    say: 'Swing from the elbow, and let the finger only land.',
    play: 'The bass alone, at an easy walking pace.',
  },
  'counts-the-bar-twice': {
    finding: 'Twice as many numbers are counted as the bar has.',
    say: 'You count the small steps. How many does the foot take?',
    play: 'The bass alone: count from one heavy stroke to the next.',
  },
  'counts-half-the-bar': {
    finding: 'Only half of the bar is counted.',
    say: 'You came round too early. Wait for the stroke that weighs most.',
    play: 'All of it, with one clap on the heaviest stroke of the bar.',
  },
  'swaps-threes-and-twos': {
    finding: 'Threes and twos change places.',
    say: 'Sway with it: does the heavy one come back after two, or after three?',
    play: 'The six-eight ballad, then the waltz, on one chord.',
  },
  'swaps-full-and-half-time': {
    finding: 'Full and half time change places.',
    say: 'Find the backbeat. Does it come twice in the bar, or once in the middle?',
    play: 'Boom-chick, then half-time, on one chord.',
  },
  'swaps-straight-and-swung': {
    finding: 'Straight and swung change places.',
    say: 'Are the two halves of a beat alike, or does the first one linger?',
    play: 'The relaxed alternate, then the low-string shuffle, on one chord.',
  },
  'swaps-driving-and-relaxed': {
    finding: 'Driving and relaxed change places.',
    say: 'Does every stroke push, or does it breathe between the numbers?',
    play: 'The loop in the driving feel, then in the relaxed one.',
  },
  'stops-the-pendulum': {
    finding: 'A hand that could swing on is heard as stopping.',
    say: 'Swing in the air along with it. Does every stroke fall on its side?',
    play: 'Muted strings, everyone swinging above them, then full.',
  },
  'keeps-the-pendulum-where-it-breaks': {
    finding: 'A swing that breaks is heard as going on.',
    say: 'Two downs in neighbouring slots: could a swinging hand play that?',
    play: 'Driving eighths, then the relaxed alternate, on one chord.',
  },
  'puts-the-change-on-one': {
    finding: 'A pushed change is put on the one.',
    say: 'Somebody was there before one. Which stroke was it?',
    play: 'The campfire strum, then the pushed change, on two chords.',
  },
  'hears-a-push-where-there-is-none': {
    finding: 'A change on the one is heard as pushed.',
    say: 'Say the one aloud. Did the new chord wait for you?',
    play: 'The pushed change, then the campfire strum, on two chords.',
  },
  'starts-the-bar-elsewhere': {
    finding: 'The right shape, begun at another place of the bar.',
    say: 'Your shape is true. Where does it begin?',
    play: 'The grid of the class, then the right one, each counted in.',
  },
  'one-and-three-for-two-and-four': {
    finding: 'One and three are marked where two and four weigh.',
    say: 'Clap only where it cracks. On which numbers did you clap?',
    play: 'The kit only, everyone clapping with the slap, then full.',
  },
  'ands-heavier-than-numbers': {
    finding: 'The ands are marked heavier than the numbers.',
    say: 'Nod on every number. Do the strong strokes come with the nod?',
    play: 'Muted strings, the numbers counted aloud, then full.',
  },
  'all-alike': {
    finding: 'Every stroke is marked alike.',
    say: 'If you could keep one stroke of the bar, which would it be?',
    play: 'The kit only, then all of it, slower, clapping on the heavy strokes.',
  },
  'foot-and-hat-swapped': {
    finding: 'Kick and hi-hat change places.',
    say: 'Low and round, or high and short?',
    play: 'The kit only, then foot and closed hat on one chord.',
  },
  'open-hat-missed': {
    finding: 'The open hat is taken for a closed one.',
    say: 'One of them goes on hissing after it was struck. Which one?',
    play: 'Foot and closed hat, then foot and open hat, on one chord.',
  },
  'mute-heard-as-rest': {
    finding: 'A muted stroke is taken for silence.',
    say: 'It has no note, and still it knocks. Where is the hand?',
    play: 'Muted strings, everyone tapping each knock along.',
  },
  'loses-the-pendulum': {
    finding: 'After a silent slot down and up are exchanged.',
    say: 'The hand went by there too. Let yours go by with it.',
    play: 'Muted strings, every arm swinging on through the gap, then full.',
  },
  'opens-one-slot-off': {
    finding: 'The open stroke is marked one slot beside.',
    say: 'You heard it ring. Was it one slot earlier, or one later?',
    play: 'Mute-and-open, slower, with every slot counted aloud.',
  },
};
