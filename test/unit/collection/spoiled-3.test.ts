import { describeSpoiled } from './spoiled-share.ts';

describeSpoiled(3);
