/**
 * How far the work list looks ahead. These are our own choices of what is worth seeing early; no source sets them, and
 * no figure of a report depends on them.
 */

/** Appointments, planned starts and ends of programmes are shown from this many days before. */
export const AHEAD_DAYS = 14;

/** An offer without an answer is to be followed up after this many days. */
export const REPLY_DAYS = 14;

/** A programme is nearly over when this many supervised sessions or fewer are left. */
export const LAST_SESSIONS = 2;

/** Days after the end of a programme from which a missing discharge test is about to be lost. */
export const LOST_AFTER_DAYS = 14;

/** A wait is shown from this many days before the last day that counts: three weeks of 90 days. */
export const WAIT_AHEAD_DAYS = 21;

/** Of the 28 days after a hospital discharge, two weeks. */
export const HOSPITAL_WAIT_AHEAD_DAYS = 14;

/** Classes without a register are looked for this many days back. */
export const REGISTER_DAYS_BACK = 56;
