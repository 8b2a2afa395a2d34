import { z } from 'zod';
import { INDICATORS } from '../../domain/indicators/registered.js';
import { findMeasure, MEASURES } from '../../domain/measures/catalogue.js';
import { PREDICTION_EQUATIONS } from '../../domain/prediction/registered.js';
import type { App } from '../app-types.js';
import { problemFor } from '../problem/problem-for.js';
import { problemResponses, sendProblem } from '../problem/problem.js';
import { PAGE_QUERY, pageOfList } from '../schema/paging.js';
import {
  EquationPage,
  IndicatorPage,
  MeasurePage,
  MeasureShown,
  presentEquation,
  presentIndicator,
  presentMeasure,
} from './catalogue-schema.js';

/** Routes of the clinical catalogue: measures and prediction equations with their sources. */
export function catalogueRoutes(app: App): void {
  const tags = ['definitions'];

  app.get(
    '/measures',
    {
      schema: {
        operationId: 'listMeasures',
        summary: 'List the measures with their limits, thresholds and sources',
        tags,
        querystring: z.strictObject(PAGE_QUERY),
        response: { 200: MeasurePage, ...problemResponses(400, 401) },
      },
    },
    async (request, reply) => {
      const page = pageOfList(MEASURES, request.query, 'measures', (measure) => measure.id);
      if (page.kind === 'refused') return sendProblem(reply, problemFor(page.refusal));
      const { rows, nextCursor } = page.value;
      return reply.send({ items: rows.map(presentMeasure), nextCursor });
    },
  );

  app.get(
    '/measures/:measureId',
    {
      schema: {
        operationId: 'getMeasure',
        summary: 'Read one measure',
        tags,
        params: z.strictObject({ measureId: z.string().max(80) }),
        response: { 200: MeasureShown, ...problemResponses(400, 401, 404) },
      },
    },
    async (request, reply) => {
      const measure = findMeasure(request.params.measureId);
      if (measure === undefined)
        return sendProblem(reply, problemFor({ code: 'not-found', what: 'measure' }));
      return reply.send(presentMeasure(measure));
    },
  );

  app.get(
    '/prediction-equations',
    {
      schema: {
        operationId: 'listPredictionEquations',
        summary: 'List the prediction equations with their populations and sources',
        tags,
        querystring: z.strictObject(PAGE_QUERY),
        response: { 200: EquationPage, ...problemResponses(400, 401) },
      },
    },
    async (request, reply) => {
      const page = pageOfList(
        PREDICTION_EQUATIONS,
        request.query,
        'prediction-equations',
        (equation) => equation.id,
      );
      if (page.kind === 'refused') return sendProblem(reply, problemFor(page.refusal));
      const { rows, nextCursor } = page.value;
      return reply.send({ items: rows.map(presentEquation), nextCursor });
    },
  );

  app.get(
    '/indicators',
    {
      schema: {
        operationId: 'listIndicators',
        summary: 'List the indicators with their rules and sources',
        tags,
        querystring: z.strictObject(PAGE_QUERY),
        response: { 200: IndicatorPage, ...problemResponses(400, 401) },
      },
    },
    async (request, reply) => {
      const page = pageOfList(INDICATORS, request.query, 'indicators', (indicator) => indicator.id);
      if (page.kind === 'refused') return sendProblem(reply, problemFor(page.refusal));
      const { rows, nextCursor } = page.value;
      return reply.send({ items: rows.map(presentIndicator), nextCursor });
    },
  );
}
