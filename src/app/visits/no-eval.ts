/**
 * Imported before any schema is made: zod would try `new Function` to make its own code, which
 * the Content-Security-Policy forbids and reports.
 */
import { config } from 'zod/mini';

config({ jitless: true });
