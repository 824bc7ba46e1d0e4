import { ensureDebianPackages } from './debian.ts';

/** Runs once before all tests, so that a missing program is one clear line and not a hundred failures. */
export default function setUp(): void {
  ensureDebianPackages();
}
