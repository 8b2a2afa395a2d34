import { asRecord, asRecords } from '../response.js';

/** A JSON Schema, as the document holds it. */
export type Schema = Readonly<Record<string, unknown>>;

/** A parameter of an operation. */
export interface Parameter {
  readonly name: string;
  readonly in: 'path' | 'query' | 'header';
  readonly isRequired: boolean;
  readonly schema: Schema;
}

/** What the document says of an operation: all that a request is made from. */
export interface DescribedOperation {
  readonly operationId: string;
  readonly method: 'GET' | 'POST' | 'PUT' | 'PATCH' | 'DELETE';
  /** With parameters in braces. */
  readonly path: string;
  readonly parameters: readonly Parameter[];
  readonly body: Schema | null;
  readonly statuses: ReadonlySet<number>;
}

/** The operations of an OpenAPI document, and its schemas by reference. */
export interface ApiDocument {
  readonly operations: readonly DescribedOperation[];
  readonly schemaAt: (reference: string) => Schema;
}

/** Reads an OpenAPI document as it is served. */
export function readDocument(document: unknown): ApiDocument {
  const schemas = asRecord(asRecord(asRecord(document)['components'])['schemas']);
  const operations = Object.entries(asRecord(asRecord(document)['paths'])).flatMap(([path, methods]) =>
    Object.entries(asRecord(methods)).map(([method, described]) =>
      operationOf(path, method, asRecord(described)),
    ),
  );
  return {
    operations,
    schemaAt: (reference) => asRecord(schemas[reference.replace('#/components/schemas/', '')]),
  };
}

function operationOf(path: string, method: string, described: Schema): DescribedOperation {
  const { operationId, parameters = [], requestBody } = described;
  return {
    operationId: String(operationId),
    method: method.toUpperCase() as DescribedOperation['method'],
    path,
    parameters: asRecords(parameters).map((parameter) => ({
      name: String(parameter['name']),
      in: parameter['in'] as Parameter['in'],
      isRequired: parameter['required'] === true,
      schema: asRecord(parameter['schema']),
    })),
    body: requestBody === undefined ? null : bodyOf(asRecord(requestBody)),
    statuses: new Set(Object.keys(asRecord(described['responses'])).map(Number)),
  };
}

/** The schema of a JSON body; a body of another kind is sent as any object. */
function bodyOf(requestBody: Schema): Schema {
  const json = asRecord(requestBody['content'])['application/json'];
  return json === undefined ? {} : asRecord(asRecord(json)['schema']);
}
