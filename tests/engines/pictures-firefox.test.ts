import { startFirefox } from './support/firefox.ts';
import { picturesIn } from './support/pictures.ts';

picturesIn('Firefox', startFirefox);
