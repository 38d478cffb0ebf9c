import { drawingStyle } from '@dryfit/output';
import { render } from 'preact';
import type { FromDrawing } from '../../panel/messages.js';
import { hostOf } from '../host.js';
import { App } from './app.js';
import type { View } from './state.js';

// The pens of a drawing; its colours are the page's own.
const pens = new CSSStyleSheet();
pens.replaceSync(drawingStyle);
document.adoptedStyleSheets = [pens];

const page = document.getElementById('page');
if (page) render(<App host={hostOf<FromDrawing, View>()} />, page);
