import { describeFixesOf } from './fixes-of.ts';

describeFixesOf(2);
