import { parseGroove, type Groove } from './grooves.ts';

/** Lanes of a groove in one line: strokes, zones, touches, accents, and pushes where there are any. */
const lanes = (strk: string, zone: string, tch: string, acc: string, chg?: string) =>
  ` / strk ${strk} / zone ${zone} / tch ${tch} / acc ${acc}${chg === undefined ? '' : ` / chg ${chg}`}`;

const ALTERNATE = 'DUDUDUDU';
const OPEN = 'oooooooo';

/**
 * Grooves beside the catalogue that differ from another, or from one there, in one thing alone; all are common practice on the guitar.
 * Each stands in its group by what it is asked for.
 */
const TEXTS: readonly string[] = [
  // Both go equally fast.
  `driving-downs, Driving downs | E8 | 4/4 | 92-144 | r=1${lanes('DDDDDDDD', 'LLLLLLLL', 'pppppppp', '31213121')}`,
  `relaxed-strum, Relaxed strum | E8 | 4/4 | 92-144 | r=1${lanes(ALTERNATE, 'AHAHAHAH', OPEN, '31213121')}`,
  // Only the hat: short, where the groove of the catalogue lets it ring.
  `foot-and-short-hat, Foot and short hat | E8 | 4/4 | 104-132 | r=1${lanes(ALTERNATE, 'BHBHBHBH', 'pcpcpcpc', '32323232')}`,
  // Only how long the first of two eighths is.
  `straight-alternate, Straight alternate | E8 | 4/4 | 76-120 | r=1${lanes(ALTERNATE, 'AHAHAHAH', OPEN, '31213121')}`,
  `swung-alternate, Swung alternate | E8 | 4/4 | 76-120 | r=2${lanes(ALTERNATE, 'AHAHAHAH', OPEN, '31213121')}`,
  // Only how six equal eighths are grouped.
  `six-in-two, Six in two | C6 | 6/8 | 52-84 | r=1${lanes('DUDUDU', 'AHHAHH', 'oooooo', '311211')}`,
  `six-in-three, Six in three | W6 | 3/4 | 78-126 | r=1${lanes('DUDUDU', 'AHAHAH', 'oooooo', '312121')}`,
  // Only where the slap falls.
  `slap-on-two-and-four, Slap on two and four | E8 | 4/4 | 92-152 | r=1${lanes(ALTERNATE, 'BHAHHHAH', 'pcxcccxc', '31312131')}`,
  `slap-on-three, Slap on three | E8 | 4/4 | 92-152 | r=1${lanes(ALTERNATE, 'BHHHAHHH', 'pcccxccc', '31213121')}`,
  `swung-slap-on-three, Swung slap on three | E8 | 4/4 | 92-126 | r=2${lanes(ALTERNATE, 'BHHHAHHH', 'pcccxccc', '31213121')}`,
  // Only whether the last up plays the chord to come.
  `ringing-last-up, Ringing last up | E8 | 4/4 | 84-132 | r=1${lanes('DuDUdUdU', 'A.AH.H.A', 'o.oo.o.o', '30210203')}`,
  `pushed-last-up, Pushed last up | E8 | 4/4 | 84-132 | r=1${lanes('DuDUdUdU', 'A.AH.H.A', 'o.oo.o.o', '30210203', '.......>')}`,
  `pushed-alternate, Pushed alternate | E8 | 4/4 | 84-126 | r=1${lanes(ALTERNATE, 'AHAHAHAA', OPEN, '31213123', '.......>')}`,
  `pushed-quarters, Pushed quarters | E8 | 4/4 | 84-138 | r=1${lanes('DuDuDudU', 'A.A.A..A', 'o.o.o..o', '30203003', '.......>')}`,
  // Only which of numbers and ands are heavy.
  `heavy-numbers, Heavy numbers | E8 | 4/4 | 76-132 | r=1${lanes(ALTERNATE, 'AHAHAHAH', OPEN, '31313131')}`,
  `heavy-ands, Heavy ands | E8 | 4/4 | 76-132 | r=1${lanes(ALTERNATE, 'AHAHAHAH', OPEN, '13131313')}`,
  `backbeat-strum, Backbeat strum | E8 | 4/4 | 76-126 | r=1${lanes(ALTERNATE, 'AHAHAHAH', OPEN, '21311131')}`,
  `backbeat-quarters, Backbeat quarters | E8 | 4/4 | 66-120 | r=1${lanes('DuDuDuDu', 'A.A.A.A.', 'o.o.o.o.', '20301030')}`,
  `heavy-one-and-three, Heavy one and three | E8 | 4/4 | 76-126 | r=1${lanes(ALTERNATE, 'AHAHAHAH', OPEN, '31113111')}`,
  `heavy-one, Heavy one | E8 | 4/4 | 76-132 | r=1${lanes(ALTERNATE, 'AHAHAHAH', OPEN, '31111111')}`,
  `heavy-four, Heavy four | E8 | 4/4 | 76-126 | r=1${lanes(ALTERNATE, 'AHAHAHAH', OPEN, '21111131')}`,
  `heavy-one-and-two-and, Heavy one and two-and | E8 | 4/4 | 84-126 | r=1${lanes(ALTERNATE, 'AHAHAHAH', OPEN, '31131111')}`,
  // Only which of the hats opens.
  `hat-opens-on-four-and, Hat opens on four-and | E8 | 4/4 | 84-120 | r=1${lanes(ALTERNATE, 'BHBHBHBH', 'pcpcpcpo', '31313132')}`,
  `hat-opens-twice, Hat opens twice | E8 | 4/4 | 84-120 | r=1${lanes(ALTERNATE, 'BHBHBHBH', 'pcpopcpo', '31323132')}`,
  `slap-and-open-hat, Slap and open hat | E8 | 4/4 | 84-120 | r=1${lanes(ALTERNATE, 'BHAHBHAH', 'pcxopcxc', '31322131')}`,
  // Only which of the muted downs ring.
  `first-beat-opens, First beat opens | E8 | 4/4 | 104-144 | r=1${lanes('DDDDDDDD', 'AALLLLLL', 'oopppppp', '32212121')}`,
  `backbeats-open, Backbeats open | E8 | 4/4 | 96-126 | r=1${lanes('DDDDDDDD', 'LLAALLAA', 'ppooppoo', '21322132')}`,
  `two-and-opens, Two-and and four-and open | E8 | 4/4 | 96-132 | r=1${lanes('DDDDDDDD', 'LLLALLLA', 'pppopppo', '21232123')}`,
  // Only what answers the bass on 2 and 4.
  `bass-and-slap, Bass and slap | E8 | 4/4 | 80-126 | r=1${lanes(ALTERNATE, 'BHAHBHAH', 'ocxcocxc', '21312131')}`,
  `bass-and-strum, Bass and strum | E8 | 4/4 | 80-126 | r=1${lanes(ALTERNATE, 'BHAHBHAH', 'ococococ', '21312131')}`,
  // Only what the hand does between the hits: dead strokes, or none.
  `hits-alone, Hits alone | S16 | 4/4 | 80-108 | r=1${lanes('DudUduDudUduDudu', 'H..H..H..H..H...', 'c..c..c..c..c...', '3002002002003000')}`,
  `hits-and-dead-strokes, Hits and dead strokes | S16 | 4/4 | 80-108 | r=1${lanes('DUDUDUDUDUDUDUDU', 'HHHHHHHHHHHHHHHH', 'cxxcxxcxxcxxcxxx', '3112112112113111')}`,
  `scratch-with-gaps, Scratches with gaps | S16 | 4/4 | 80-108 | r=1${lanes('DuDUdUDUDuDUdUDU', 'H.HH.HHHH.HH.HHH', 'c.xx.xcxc.xx.cxx', '3011013120110311')}`,
  `sixteenth-slap, Sixteenths with a slap | S16 | 4/4 | 72-100 | r=1${lanes('DuDUDuDUDuDUDuDU', 'A.HHA.HHA.HHA.HH', 'o.oox.ooo.oox.oo', '2011301120113011')}`,
  // Each group begins with a down, so that the hand stops to come down again.
  `three-three-two-downs, Three-three-two, downs first | E8 | 4/4 | 84-132 | r=1${lanes('DUDDUDDU', 'AHHAHHAH', OPEN, '31131131')}`,
  // Muted downs with a breath after the numbers.
  `chugging-downs, Chugging downs | E8 | 4/4 | 112-160 | r=1${lanes('DuDDDuDD', 'L.LLL.LL', 'p.ppp.pp', '30213021')}`,
  `seconds-doubled, Second beats doubled | E8 | 4/4 | 76-126 | r=1${lanes('DuDDuUDD', 'A.HA.HAH', 'o.oo.ooo', '30210221')}`,
  `three-alternate, Alternate in three | W6 | 3/4 | 76-132 | r=1..1.3${lanes('DuDUDU', 'A.AHAH', 'o.oooo', '302121')}`,
];

/** Grooves that beat levels and contrasts play beside those of the catalogue. */
export const BEAT_GROOVES: readonly Groove[] = TEXTS.map(parseGroove);
