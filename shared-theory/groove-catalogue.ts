/**
 * The strumming patterns, in the grid language that `parseGroove` reads. All are common practice on the guitar; tempo
 * ranges and accents are starting values. An opening bar is there where the pattern alone would not let a third ring.
 */
export const GROOVE_TEXTS: readonly string[] = [
  `quarter-downs, Quarter downs | E8 | 4/4 | 60-116 | r=1 | numbers only; the hand goes up silently on the ands
strk D u D u D u D u
zone A . A . A . A .
tch  o . o . o . o .
acc  3 0 2 0 2 0 2 0`,

  `relaxed-alternate, Relaxed alternate | E8 | 4/4 | 66-120 | r=1..1.3 | heavy numbers, light ands
strk D U D U D U D U
zone A H A H A H A H
tch  o o o o o o o o
acc  3 1 2 1 3 1 2 1`,

  `driving-eighths, Driving eighths | E8 | 4/4 | 120-184 | r=1 | all downs, palm-muted low strings; each chord opens with one full stroke
strk D D D D D D D D
zone L L L L L L L L
tch  p p p p p p p p
acc  3 1 2 1 3 1 2 1
open-strk D u D D D D D D
open-zone A . L L L L L L
open-tch  o . p p p p p p
open-acc  3 0 2 1 3 1 2 1`,

  `foot-and-closed-hat, Foot and closed hat | E8 | 4/4 | 92-132 | r=1 | muted bass on the numbers, short highs on the ands, all downs
strk D D D D D D D D
zone B H B H B H B H
tch  p c p c p c p c
acc  3 1 3 1 3 1 3 1
open-strk D u D D D D D D
open-zone A . B H B H B H
open-tch  o . p c p c p c
open-acc  3 0 3 1 3 1 3 1`,

  `foot-and-open-hat, Foot and open hat | E8 | 4/4 | 104-132 | r=1 | muted bass on the numbers, ringing upstrokes on the ands
strk D U D U D U D U
zone B H B H B H B H
tch  p o p o p o p o
acc  3 2 3 2 3 2 3 2
open-strk D u D U D U D U
open-zone A . B H B H B H
open-tch  o . p o p o p o
open-acc  3 0 3 2 3 2 3 2`,

  `foot-slap-hat, Foot, slap, hat | E8 | 4/4 | 76-120 | r=1 | muted bass on 1 and 3, a dead slap on 2 and 4, short highs between
strk D U D U D U D U
zone B H A H B H A H
tch  p c x c p c x c
acc  3 1 3 1 2 1 3 1
open-strk D u D U D U D U
open-zone A . A H B H A H
open-tch  o . x c p c x c
open-acc  3 0 3 1 2 1 3 1`,

  `campfire-strum, Campfire strum | E8 | 4/4 | 76-132 | r=1..1.5 | down, down-up, (miss) up, down-up
strk D u D U d U D U
zone A . A H . H A H
tch  o . o o . o o o
acc  3 0 2 1 0 2 2 1`,

  `boom-chick, Boom-chick | E8 | 4/4 | 90-168 | r=1 | bass, chord, other bass, chord; the first chord after a change rings
strk D u D u D u D u
zone B . H . b . H .
tch  o . c . o . c .
acc  2 0 3 0 2 0 3 0
open-strk D u D u D u D u
open-zone B . H . b . H .
open-tch  o . o . o . c .
open-acc  2 0 3 0 2 0 3 0`,

  `boom-chicka, Boom-chicka | E8 | 4/4 | 88-144 | r=1..1.5 | boom-chick with an up after each chord
strk D u D U D u D U
zone B . H H b . H H
tch  o . c c o . c c
acc  2 0 3 1 2 0 3 1
open-strk D u D U D u D U
open-zone B . H H b . H H
open-tch  o . o o o . c c
open-acc  2 0 3 1 2 0 3 1`,

  `train-beat, Train beat | S16 | 4/4 | 84-126 | r=1 | boom-chicka twice as dense under a half-lowered palm, heavy on the ands
strk D u D U D u D U D u D U D u D U
zone B . H H b . H H B . H H b . H H
tch  p . c c p . c c p . c c p . c c
acc  2 0 3 1 2 0 3 1 2 0 3 1 2 0 3 1
open-strk D u d u D u D U D u D U D u D U
open-zone A . . . b . H H B . H H b . H H
open-tch  o . . . p . c c p . c c p . c c
open-acc  3 0 0 0 2 0 3 1 2 0 3 1 2 0 3 1`,

  `offbeat-skank, Offbeat skank | E8 | 4/4 | 66-92 | r=1..1.4 | short chops on every and; some count it twice as fast, on 2 and 4
strk u D u D u D u D
zone . H . H . H . H
tch  . c . c . c . c
acc  0 3 0 3 0 3 0 3
open-strk D u - D u D u D
open-zone A . . H . H . H
open-tch  o . . c . c . c
open-acc  3 0 0 3 0 3 0 3`,

  `quick-up-chop, Quick up-chop | E8 | 4/4 | 120-176 | r=1 | short ups on the ands; the hand falls past the strings on the numbers
strk d U d U d U d U
zone . H . H . H . H
tch  . c . c . c . c
acc  0 3 0 3 0 3 0 3
open-strk D u d U d U d U
open-zone A . . H . H . H
open-tch  o . . c . c . c
open-acc  3 0 0 3 0 3 0 3`,

  `low-string-shuffle, Low-string shuffle | E8 | 4/4 | 84-152 | r=1.5..2.3 | muted low strings, long and short, weight on 2 and 4; each chord opens with one full stroke
strk D U D U D U D U
zone L L L L L L L L
tch  p p p p p p p p
acc  2 1 3 1 2 1 3 1
open-strk D u D U D U D U
open-zone A . L L L L L L
open-tch  o . p p p p p p
open-acc  3 0 3 1 2 1 3 1`,

  `slow-twelve-eight, Slow twelve-eight | T12 | 12/8 | 44-76 | r=1 | bass and two chords to each beat, weight on 2 and 4; the tempo counts the big beats
strk D D D D D D D D D D D D
zone B H H A H H B H H A H H
tch  o o o o o o o o o o o o
acc  2 1 1 3 1 1 2 1 1 3 1 1`,

  `six-eight-ballad, Six-eight ballad | C6 | 6/8 | 40-66 | r=1 | two big beats of three, all ringing; the tempo counts the big beats
strk D D U D D U
zone B H H A H H
tch  o o o o o o
acc  3 1 1 2 1 1`,

  `waltz, Waltz | W6 | 3/4 | 84-180 | r=1 | bass, chord, chord; the first chord after a change rings until the next
strk D u D u D u
zone B . H . H .
tch  o . c . c .
acc  3 0 1 0 1 0
open-strk D u D u D u
open-zone B . H . H .
open-tch  o . o . c .
open-acc  3 0 1 0 1 0`,

  `bossa-like, Bossa-like | E16 | 4/4 | 104-152 | r=1 | without a pick: the thumb on 1 and 3, plucked chords against it over two bars; a chord opens on the first of them
strk P - - F T - F - T - F - T F - -
zone A . . H b . H . B . H . b H . .
tch  o . . c o . c . o . c . o c . .
acc  2 0 0 2 2 0 2 0 2 0 2 0 2 2 0 0
open-strk P - - F T - F -
open-zone A . . H b . H .
open-tch  o . . c o . c .
open-acc  2 0 0 2 2 0 2 0`,

  `funk-sixteenths, Funk sixteenths | S16 | 4/4 | 88-116 | r=1..1.2 | the hand never rests: short hits in threes and a four between dead strokes
strk D U D U D U D U D U D U D U D U
zone H H H H H H H H H H H H H H H H
tch  c x x c x x c x x c x x c x x x
acc  3 1 1 2 1 1 2 1 1 2 1 1 3 1 1 1
open-strk D u d u D U D U D U D U D U D U
open-zone A . . . H H H H H H H H H H H H
open-tch  o . . . x x c x x c x x c x x x
open-acc  3 0 0 0 1 1 2 1 1 2 1 1 3 1 1 1`,

  `half-time, Half-time | E8 | 4/4 | 120-168 | r=1 | felt at half the tempo: the chord on 1, a slap on 3
strk D u d u D u d U
zone A . . . A . . H
tch  o . . . x . . o
acc  3 0 0 0 3 0 0 1`,

  `pushed-change, Pushed change | E8 | 4/4 | 88-132 | r=1 | the last up already plays the chord of the next bar and rings over its one
strk D u D U d U d U
zone A . A H . H . A
tch  o . o o . o . o
acc  3 0 2 1 0 2 0 3
chg  . . . . . . . >`,

  `mute-and-open, Mute-and-open | E8 | 4/4 | 104-152 | r=1 | three muted beats, the fourth rings and shows where the bar ends
strk D D D D D D D D
zone L L L L L L A A
tch  p p p p p p o o
acc  2 1 2 1 2 1 3 2`,

  `eighth-downs-backbeat, Eighth downs, backbeat | E8 | 4/4 | 132-176 | r=1 | all downs as where it drives, the weight on 2 and 4
strk D D D D D D D D
zone L L A L L L A L
tch  p p c p p p c p
acc  2 1 3 1 2 1 3 1
open-strk D u D D D D D D
open-zone A . A L L L A L
open-tch  o . c p p p c p
open-acc  3 0 3 1 2 1 3 1`,

  `sixteenth-ballad, Sixteenth ballad | S16 | 4/4 | 58-84 | r=1 | one long stroke, then a busy second half
strk D u d u D u D U d U D U D u D U
zone A . . . A . H H . H A H A . H H
tch  o . . . o . o o . o o o o . o o
acc  3 0 0 0 2 0 1 1 0 1 2 1 2 0 1 1`,

  `gallop, Gallop | S16 | 4/4 | 92-148 | r=1 | one long and two short on muted low strings
strk D u D U D u D U D u D U D u D U
zone L . L L L . L L L . L L L . L L
tch  p . p p p . p p p . p p p . p p
acc  3 0 1 1 2 0 1 1 3 0 1 1 2 0 1 1
open-strk D u d u D u D U D u D U D u D U
open-zone A . . . L . L L L . L L L . L L
open-tch  o . . . p . p p p . p p p . p p
open-acc  3 0 0 0 2 0 1 1 3 0 1 1 2 0 1 1`,

  `four-to-the-bar-chop, Four-to-the-bar chop | E8 | 4/4 | 112-208 | r=1 | short middle strings on every number, 2 and 4 a little heavier
strk D u D u D u D u
zone M . M . M . M .
tch  c . c . c . c .
acc  2 0 3 0 2 0 3 0
open-strk D u d u D u D u
open-zone A . . . M . M .
open-tch  o . . . c . c .
open-acc  3 0 0 0 2 0 3 0`,

  `three-three-two, Three-three-two | E8 | 4/4 | 92-138 | r=1 | weight on 1, the and of 2, and 4: one of them is an up
strk D U D U D U D U
zone A H H A H H A H
tch  o o o o o o o o
acc  3 1 1 3 1 1 3 1`,

  `seven-in-two-two-three, Seven in 2+2+3 | V7 | 7/8 | 100-150 | r=1 | two, two and three eighths, each group begins with a down; the tempo counts quarters
strk D U D U D D U
zone A H A H A A H
tch  o o o o o o o
acc  3 1 2 1 2 1 1`,
];
