// Removes what an earlier build left, so that a deleted source file cannot live on in the package.
import { rmSync } from 'node:fs';

rmSync(new URL('../dist', import.meta.url), { recursive: true, force: true });
