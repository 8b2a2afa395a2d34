import { cpSync } from 'node:fs';

/* Puts style sheet, scripts and pictures beside the compiled pages: the compiler carries over nothing but code. */
cpSync('src/web/assets', 'dist/src/web/assets', { recursive: true });
