import { startFirefox } from './support/firefox.ts';
import { journeysIn } from './support/journeys.ts';

journeysIn('Firefox', startFirefox);
