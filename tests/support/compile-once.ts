import type { TestProject } from 'vitest/node';
import { compileService } from './compiled-service.js';
import type { CompiledService } from './compiled-service.js';

declare module 'vitest' {
  interface ProvidedContext {
    /** Folder of the compiled program, file by file. */
    readonly compiledProgram: string;
    /** Folder of the bundle of what can be started. */
    readonly programBundle: string;
  }
}

let compiled: CompiledService | null = null;

/** Compiles the program once for all tests that run it in processes of its own. */
export async function setup(project: TestProject): Promise<void> {
  compiled = await compileService();
  project.provide('compiledProgram', compiled.folder);
  project.provide('programBundle', compiled.bundle);
}

/** Takes the compiled program away. */
export function teardown(): void {
  compiled?.remove();
}
