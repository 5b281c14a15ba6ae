import { startFirefox } from './support/firefox.ts';
import { recallIn } from './support/recall.ts';

recallIn('Firefox', startFirefox);
