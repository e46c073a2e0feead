import { render } from 'preact';
import '../shared/style.css';
import './student.css';
import { createKeep } from '../shared/storage.ts';
import { followScheme } from './scheme.ts';
import { App } from './app.tsx';
import { loadFace } from './face.ts';

followScheme();
const place = document.getElementById('student');
if (place) {
  // The line that stands there while the page loads.
  place.textContent = '';
  render(<App keep={createKeep()} path={location.pathname} />, place);
}
loadFace();
