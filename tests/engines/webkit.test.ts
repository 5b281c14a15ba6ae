import { startWebkit } from './support/webkit.ts';
import { journeysIn } from './support/journeys.ts';

journeysIn('WebKit', startWebkit);
