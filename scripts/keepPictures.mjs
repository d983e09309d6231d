// Puts the pictures that the browser tests took of the real screens where the README shows them.
import { cpSync, readdirSync, rmSync } from 'node:fs';

const [taken, kept] = ['build/pictures', 'docs/pictures'];
rmSync(kept, { recursive: true, force: true });
cpSync(taken, kept, { recursive: true });
console.log(readdirSync(kept).join(' '));
