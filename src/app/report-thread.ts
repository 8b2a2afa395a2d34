import { workerData } from 'node:worker_threads';
import { openReader } from '../storage/connection.js';
import { reportMaker } from '../usecases/reports/report-maker.js';
import type { ReportMaker } from '../usecases/reports/report-maker.js';

/** What a thread that makes reports is started with. */
export interface ReportThreadData {
  /** Path of the record's file; it is there, at the newest schema. */
  readonly file: string;
}

/** A method of the maker with its arguments, as they are sent to the thread. */
export type ReportCall = {
  readonly [Method in keyof ReportMaker]: {
    readonly method: Method;
    readonly args: Parameters<ReportMaker[Method]>;
  };
}[keyof ReportMaker];

const { file } = workerData as ReportThreadData;
const maker = reportMaker(openReader(file).reader);

/** What the thread does for each call. */
export function answer(call: ReportCall): Promise<unknown> {
  switch (call.method) {
    case 'report':
      return maker.report(...call.args);
    case 'file':
      return maker.file(...call.args);
    case 'figure':
      return maker.figure(...call.args);
  }
}
