#!/usr/bin/env node
/**
 * Stands in for the desktop program of VS Code: takes the same arguments for a test run, and runs it in the served editor.
 */

import 'tsx';

await import('./launch.ts');
