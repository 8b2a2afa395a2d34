import type { TestApp } from './start-app.js';
import { asRecord, textAt } from './response.js';

/** An operation as the served document describes it. */
export interface Operation {
  readonly operationId: string;
  readonly method: string;
  /** With parameters in braces, such as `/api/v1/patients/{patientId}`. */
  readonly path: string;
  readonly hasBody: boolean;
  /** Statuses that it declares. */
  readonly statuses: readonly number[];
}

/** Every operation of the document that the service serves. */
export async function servedOperations(app: TestApp): Promise<readonly Operation[]> {
  const response = await app.as(null).get('/api/v1/openapi.json');
  const paths = asRecord(asRecord(response.body)['paths']);
  return Object.entries(paths).flatMap(([path, methods]) =>
    Object.entries(asRecord(methods)).map(([method, described]) => {
      const operation = asRecord(described);
      return {
        operationId: textAt(operation, 'operationId'),
        method,
        path,
        hasBody: operation['requestBody'] !== undefined,
        statuses: Object.keys(asRecord(operation['responses'])).map(Number),
      };
    }),
  );
}

/** The operation of an id. */
export function operationOf(operations: readonly Operation[], operationId: string): Operation {
  const operation = operations.find((candidate) => candidate.operationId === operationId);
  if (operation === undefined) throw new Error(`The document has no operation ${operationId}.`);
  return operation;
}
