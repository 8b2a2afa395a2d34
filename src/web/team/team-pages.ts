import type { Web, WebApp } from '../web.js';
import { accountListPage } from './account-list-page.js';
import { accountPage } from './account-page.js';
import { auditPage } from './audit-page.js';
import { invitePage } from './invite-page.js';
import { settingsPages } from './settings-page.js';
import { tokenListPage } from './token-list-page.js';

/** The pages of the lead: accounts, tokens, settings, audit trail. */
export function teamPages(app: WebApp, web: Web): void {
  accountListPage(app, web);
  invitePage(app, web);
  accountPage(app, web);
  tokenListPage(app, web);
  settingsPages(app, web);
  auditPage(app, web);
}
