import { workerData } from 'node:worker_threads';
import { openReader } from '../storage/connection.js';
import { releaseMaker } from '../usecases/releases/release-maker.js';
import type { ReleaseMaker } from '../usecases/releases/release-maker.js';
import { reportMaker } from '../usecases/reports/report-maker.js';
import type { ReportMaker } from '../usecases/reports/report-maker.js';

/** What a thread that makes reports and releases is started with. */
export interface MakerThreadData {
  /** Path of the record's file; it is there, at the newest schema. */
  readonly file: string;
}

/** What is made in such a thread. */
export type ThreadMaker = ReportMaker & ReleaseMaker;

/** A method of the maker with its arguments, as they are sent to the thread. */
export type MakerCall = {
  readonly [Method in keyof ThreadMaker]: {
    readonly method: Method;
    readonly args: Parameters<ThreadMaker[Method]>;
  };
}[keyof ThreadMaker];

const { file } = workerData as MakerThreadData;
const { reader } = openReader(file);
const maker: ThreadMaker = { ...reportMaker(reader), ...releaseMaker(reader) };

/** What the thread does for each call. */
export function answer(call: MakerCall): Promise<unknown> {
  switch (call.method) {
    case 'report':
      return maker.report(...call.args);
    case 'file':
      return maker.file(...call.args);
    case 'figure':
      return maker.figure(...call.args);
    case 'draft':
      return maker.draft(...call.args);
    case 'forms':
      return maker.forms(...call.args);
  }
}
