/** What one mutant computed must not be found by the next, which runs in the same process. */

import { renewEngine } from '../unit/support/engine.ts';

before(renewEngine);
