import { z } from 'zod';
import { findMeasure } from '../../domain/measures/catalogue.js';
import { frameOf, sendPage } from '../frame.js';
import { sendRefusal } from '../send-refusal.js';
import { pageOf } from '../web.js';
import type { Web, WebApp } from '../web.js';
import { EquationsView } from './equations-view.js';
import { IndicatorsView } from './indicators-view.js';
import { MeasureView } from './measure-view.js';
import { MeasuresView } from './measures-view.js';
import { SourcesView } from './sources-view.js';

const Params = z.object({ measureId: z.string() });

/** Everything that a figure rests on: measures, indicators, equations, norms, and their sources. */
export function definitionPages(app: WebApp, web: Web): void {
  const page = pageOf('page:definitions');
  app.get('/definitions', page, (_request, reply) => reply.redirect('/definitions/measures', 303));

  app.get('/definitions/measures', page, (request, reply) =>
    sendPage(reply, <MeasuresView frame={frameOf(request, reply)} />),
  );

  app.get('/definitions/measures/:measureId', page, (request, reply) => {
    const measure = findMeasure(Params.parse(request.params).measureId);
    if (measure === undefined)
      return sendRefusal(web, request, reply, { code: 'not-found', what: 'measure' });
    return sendPage(reply, <MeasureView frame={frameOf(request, reply)} measure={measure} />);
  });

  app.get('/definitions/indicators', page, (request, reply) =>
    sendPage(reply, <IndicatorsView frame={frameOf(request, reply)} />),
  );

  app.get('/definitions/equations', page, (request, reply) =>
    sendPage(reply, <EquationsView frame={frameOf(request, reply)} />),
  );

  app.get('/definitions/sources', page, (request, reply) =>
    sendPage(reply, <SourcesView frame={frameOf(request, reply)} />),
  );
}
