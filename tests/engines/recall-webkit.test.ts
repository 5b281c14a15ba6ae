import { startWebkit } from './support/webkit.ts';
import { recallIn } from './support/recall.ts';

recallIn('WebKit', startWebkit);
