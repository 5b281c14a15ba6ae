import { startWebkit } from './support/webkit.ts';
import { picturesIn } from './support/pictures.ts';

picturesIn('WebKit', startWebkit);
