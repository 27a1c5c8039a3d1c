/** `npm run fuzz`: lets Node load TypeScript, then begins the campaign. */

import '../nativeCore.mjs';

await import('./campaign.ts');
