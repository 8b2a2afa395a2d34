import type { TestProject } from 'vitest/node';
import { compileService } from './compiled-service.js';
import type { CompiledService } from './compiled-service.js';

declare module 'vitest' {
  interface ProvidedContext {
    /** Folder of the compiled program. */
    readonly compiledProgram: string;
  }
}

let compiled: CompiledService | null = null;

/** Compiles the program once for all tests that run it in processes of its own. */
export function setup(project: TestProject): void {
  compiled = compileService();
  project.provide('compiledProgram', compiled.folder);
}

/** Takes the compiled program away. */
export function teardown(): void {
  compiled?.remove();
}
