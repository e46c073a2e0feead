import { signal } from '@preact/signals';
import { render } from 'preact';
import '@fontsource-variable/atkinson-hyperlegible-next';
import '@fontsource-variable/besley';
import '../shared/style.css';
import './host.css';
import { hostWords } from '../../server/protocol/words/en.ts';
import { fill } from '../../server/protocol/words/fill.ts';
import { Host } from './app.tsx';
import { openAudio } from './audio.ts';
import { frameOf } from './frame.ts';
import { createHost } from './host-state.ts';
import { keepAwake } from './keep-awake.ts';
import { createSound, type Sound } from './sound.ts';

const room = /^\/host\/([A-Za-z]+)\/?$/.exec(location.pathname)?.[1]?.toUpperCase() ?? '';

/** `?stage=dark` for dim rooms, `?contrast=more` for washed-out projectors: they only change tokens. */
const query = new URLSearchParams(location.search);
for (const name of ['stage', 'contrast'] as const) {
  const value = query.get(name);
  if (value) document.documentElement.dataset[name] = value;
}

const frame = signal(frameOf(innerWidth, innerHeight));
addEventListener('resize', () => {
  frame.value = frameOf(innerWidth, innerHeight);
});

const motion = matchMedia('(prefers-reduced-motion: reduce)');
const still = signal(motion.matches);
motion.addEventListener('change', () => {
  still.value = motion.matches;
});

/** Tablets that call themselves a desktop are told by their touch points. */
const ringSwitch =
  /iPad|iPhone/.test(navigator.userAgent) || (/Macintosh/.test(navigator.userAgent) && navigator.maxTouchPoints > 1);

let made: Sound | null = null;
const host = createHost(room, {
  makeSound: (events) => (made = createSound(openAudio, events)),
  ringSwitch,
});

function Page() {
  return (
    <Host
      view={host.view.value}
      waiting={host.waiting.value}
      lost={host.lost.value}
      sound={host.sound.value}
      actions={host.actions}
      frame={frame.value}
      still={still.value}
      unreached={host.unreached.value}
    />
  );
}

document.title = fill(hostWords.page, { room });
const root = document.getElementById('host');
if (root) render(<Page />, root);
// The library of the sound is large: it comes once the picture stands, and before the press that needs it.
void (made as Sound | null)?.preload();
keepAwake();
