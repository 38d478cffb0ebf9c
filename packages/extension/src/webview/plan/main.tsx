import { render } from 'preact';
import type { FromPlan } from '../../panel/messages.js';
import { hostOf } from '../host.js';
import { App } from './app.js';
import type { View } from './state.js';

const page = document.getElementById('page');
if (page) render(<App host={hostOf<FromPlan, View>()} />, page);
