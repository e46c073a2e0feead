/** `npm run listen`: what an outside transcriber hears of strummed chords. */
export const listenWords = {
  usage:
    'npm run listen -- --ear FOLDER [--count N] [--seed N] [--keep FOLDER] [--json]: FOLDER holds a transcriber (hear.mjs)',
  noEar:
    'No transcriber is named: give its folder with --ear FOLDER or in LISTENER_HOME. The folder holds hear.mjs, which takes a WAV file and prints JSON with notes of midi, start, end and amplitude.',
  notAnEar: '"{folder}" is no folder with a transcriber: it holds no {program}.',
  unreadable: '{program} must print JSON with notes of midi, start, end and amplitude, not "{found}".',
  failed: '{program} stopped: {why}',
  head: { chord: 'chord', shape: 'shape', voice: 'voice', groove: 'groove', bass: 'bass', quality: 'quality' },
  nothing: 'nothing',
  right: 'right',
  wrong: 'WRONG: {bass} {quality} played',
  bass: 'bass note: {right} of {of}, {percent} %',
  bassName: 'its name in any octave: {right} of {of}, {percent} %',
  quality: 'quality: {right} of {of}, {percent} %',
  by: '  {what}: bass {bass}, quality {quality} of {of}',
  bar: 'at least {percent} % of both are to be right',
} as const;
