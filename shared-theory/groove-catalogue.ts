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

  `low-string-shuffle, Low-string shuffle | E8 | 4/4 | 84-152 | r=1.5..2.3 | muted low strings, long and short, weight on 2 and 4; each chord opens with one full stroke
strk D U D U D U D U
zone L L L L L L L L
tch  p p p p p p p p
acc  2 1 3 1 2 1 3 1
open-strk D u D U D U D U
open-zone A . L L L L L L
open-tch  o . p p p p p p
open-acc  3 0 3 1 2 1 3 1`,

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
];
