import type { App, Context } from '../app-types.js';

/** Routes of outcomes and reports. */
export function reportRoutes(_app: App, _context: Context): void {}
