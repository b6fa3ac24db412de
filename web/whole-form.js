// Waits for the first picture, and puts in the rest of the form: whoever imports this finds all of it.

import { drawn } from './drawn.js';
import { unfold } from './unfold.js';

if (performance.getEntriesByName('first-contentful-paint').length === 0) await drawn();
unfold();
