import type { PropsWithChildren } from '@kitajs/html';
import { ROLE_WORDS } from '../domain/account/role-words.js';
import { mayOpen } from '../auth/access.js';
import { assetAddress } from './assets.js';
import { attributeText } from './components/field.js';
import { Form } from './components/form.js';
import type { Frame } from './frame.js';
import { isWithin, placesOf } from './places.js';
import type { Visitor } from './web.js';

type PageProps = PropsWithChildren<{
  readonly frame: Frame;
  /** Stands in the tab, and is not repeated on the page: the page has its own `h1`. */
  readonly title: string;
  /** Names of scripts among the assets, for pages that are quicker with one; none is needed by any page. */
  readonly scripts?: readonly string[];
  /** Names of further style sheets among the assets. */
  readonly styles?: readonly string[];
  /** Without scripts the page is asked for again after so many seconds: for work that goes on. */
  readonly askAgainS?: number;
  /** Stands at the foot of every sheet of paper, such as the data cut. */
  readonly sheetLine?: string;
}>;

/** The frame around every page: language, title, skip link, top bar, places, and one `main`. */
export function Page({
  frame,
  title,
  scripts = [],
  styles = [],
  askAgainS,
  sheetLine,
  children,
}: PageProps): JSX.Element {
  const { visitor } = frame;
  return (
    <html lang="en-GB" data-sheet-line={sheetLine === undefined ? undefined : attributeText(sheetLine)}>
      <head>
        <meta charset="utf-8" />
        <title safe>{`${title} - Tidemark`}</title>
        <meta name="viewport" content="width=device-width, initial-scale=1" />
        <meta name="robots" content="noindex, nofollow" />
        {['tidemark.css', ...styles].map((name) => (
          <link rel="stylesheet" href={assetAddress(name)} />
        ))}
        <link rel="icon" href={assetAddress('favicon.svg')} type="image/svg+xml" />
        {scripts.map((name) => (
          <script src={assetAddress(name)} defer />
        ))}
        {askAgainS === undefined ? (
          ''
        ) : (
          <noscript>
            <meta http-equiv="refresh" content={String(askAgainS)} />
          </noscript>
        )}
      </head>
      <body>
        <a class="skip" href="#content">
          Skip to the content
        </a>
        <TopBar frame={frame} />
        {visitor?.session.kind === 'ready' ? <PlacesRow visitor={visitor} path={frame.path} /> : ''}
        <main id="content" tabindex="-1">
          <div class="column">{children}</div>
        </main>
        <footer class="foot">
          <div class="column">
            <p>
              Tidemark records and computes. It does not prescribe: decisions belong to registered clinicians
              under local policy.
            </p>
            {visitor?.session.kind === 'ready' ? (
              <p>
                <a href="/definitions">Definitions and sources</a>
              </p>
            ) : (
              ''
            )}
          </div>
        </footer>
      </body>
    </html>
  );
}

function TopBar({ frame }: { readonly frame: Frame }): JSX.Element {
  const { visitor } = frame;
  return (
    <header class="bar">
      <div class="column">
        <a class="product" href="/">
          <TideMark />
          Tidemark
        </a>
        {visitor === null ? (
          ''
        ) : (
          <>
            <span class="team" safe>
              {visitor.placeName}
            </span>
            {mayOpen(visitor.actor.role, 'page:search') ? <QuickSearch frame={frame} /> : ''}
            <div class="who">
              <span>
                <a href="/account" safe>
                  {visitor.displayName}
                </a>
                <span class="muted" safe>{`, ${ROLE_WORDS[visitor.actor.role].toLowerCase()}`}</span>
              </span>
              <Form frame={frame} action="/sign-out">
                <button class="link-button" type="submit">
                  Sign out
                </button>
              </Form>
            </div>
          </>
        )}
      </div>
    </header>
  );
}

/** Finds a person from every page. What is typed goes in the body of the form, never in an address. */
function QuickSearch({ frame }: { readonly frame: Frame }): JSX.Element {
  return (
    <Form frame={frame} action="/search" class="search" label="Search">
      <label for="quick-search" class="visually-hidden">
        Name, NHS number or date of birth
      </label>
      <input id="quick-search" name="q" type="search" placeholder="Name, NHS number" autocomplete="off" />
      <button class="button desk" type="submit">
        Find
      </button>
    </Form>
  );
}

/** Two lines and a wave: what the water has left on the shore. */
function TideMark(): JSX.Element {
  return (
    <svg
      viewBox="0 0 32 32"
      fill="none"
      stroke="currentColor"
      stroke-width="3"
      stroke-linecap="round"
      aria-hidden="true"
    >
      <path d="M6 7h20M6 13h13" />
      <path d="M3 23c3.500-4 6.500-4 10 0s6.500 4 10 0 4-3 6-2" />
    </svg>
  );
}

function PlacesRow({ visitor, path }: { readonly visitor: Visitor; readonly path: string }): JSX.Element {
  return (
    <nav class="places" aria-label="Places">
      <div class="column">
        <ul>
          {placesOf(visitor.actor.role).map((place) => (
            <li>
              <a href={place.path} aria-current={isWithin(path, place.path) ? 'page' : undefined} safe>
                {place.label}
              </a>
            </li>
          ))}
        </ul>
      </div>
    </nav>
  );
}
