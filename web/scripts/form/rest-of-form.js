// Waits for the first picture, and puts in the rest of the form: whoever imports this finds all of it.

import { drawn } from '../common/after-paint.js';
import { unfold } from '../common/unfold.js';

if (performance.getEntriesByName('first-contentful-paint').length === 0) await drawn();
unfold();
