import type { Refusal } from '../../domain/refusal/refusal.js';
import type { ProblemBody } from './problem.js';

/** What is refused about accounts and signing in. */
export type AccountRefusal = Extract<
  Refusal,
  {
    readonly code:
      | 'sign-in-refused'
      | 'no-role-here'
      | 'sign-in-delayed'
      | 'session-over'
      | 'invitation-not-valid'
      | 'sign-in-name-taken'
      | 'second-factor-present'
      | 'last-lead'
      | 'own-account';
  }
>;

/** The part of the mapping that is about accounts and signing in. */
export function accountProblem(refusal: AccountRefusal): ProblemBody {
  switch (refusal.code) {
    case 'sign-in-refused':
      return {
        type: '/problems/sign-in-refused',
        title: 'Sign-in refused',
        status: 401,
        detail: 'The sign-in name or the passphrase is not right, or the account may not sign in.',
      };
    case 'no-role-here':
      return {
        type: '/problems/no-role-here',
        title: 'You have no role here',
        status: 403,
        detail: 'Your organisation knows you, and has given you no role in this service. Ask the team lead.',
      };
    case 'sign-in-delayed':
      return {
        type: '/problems/sign-in-delayed',
        title: 'Too many wrong attempts',
        status: 429,
        detail: `Wait ${refusal.retryAfterSeconds} seconds before the next attempt.`,
      };
    case 'session-over':
      return {
        type: '/problems/session-over',
        title: 'The session is over',
        status: 401,
        detail: 'Sign in again.',
      };
    case 'invitation-not-valid':
      return {
        type: '/problems/invitation-not-valid',
        title: 'The invitation cannot be used',
        status: 404,
        detail: 'It was used, taken back or is too old. Ask the team lead for a new one.',
      };
    case 'sign-in-name-taken':
      return {
        type: '/problems/sign-in-name-taken',
        title: 'The sign-in name is taken',
        status: 409,
        detail: 'Choose another sign-in name.',
      };
    case 'second-factor-present':
      return {
        type: '/problems/second-factor-present',
        title: 'There is a second factor',
        status: 409,
        detail: 'Remove the second factor before you set up another.',
      };
    case 'last-lead':
      return {
        type: '/problems/last-lead',
        title: 'The last lead of the team',
        status: 409,
        detail: 'The team would be left without a lead who can sign in.',
      };
    case 'own-account':
      return {
        type: '/problems/own-account',
        title: 'Your own account',
        status: 409,
        detail: 'Another lead must do this for you.',
      };
  }
}
