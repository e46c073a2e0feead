import { render } from 'preact';
import '@fontsource-variable/atkinson-hyperlegible-next';
import '@fontsource-variable/besley';
import '../shared/style.css';
import './desk.css';
import { createDesk } from './desk-state.ts';
import { DeskPage } from './screens/desk-page.tsx';
import { Lobby } from './screens/lobby.tsx';

const room = /^\/desk\/([A-Za-z]+)\/?$/.exec(location.pathname)?.[1]?.toUpperCase();
const root = document.getElementById('desk');
if (root) render(room ? <DeskPage desk={createDesk(room)} /> : <Lobby />, root);
