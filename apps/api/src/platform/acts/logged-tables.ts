/** Tables whose rows leave no lines in the log, each with the reason; every other table does, also one that comes later. */
export const unlogged: Readonly<Record<string, string>> = {
  answering: 'work under way; who signed what is said in the log, and what it decides is logged',
  answering_part: 'work under way; what it decides is logged',
  calendar_entry: 'what calendars were sent; worked out from what is logged',
  change: 'what screens are told; of this minute',
  csv_import: 'work under way; what comes in by it is logged',
  csv_import_end: 'work under way; what comes in by it is logged',
  event: 'the log',
  input_change: 'what plans have yet to see; worked out from what is logged',
  item_record: 'worked out from what is logged',
  job: 'work under way; what comes of it is logged',
  migrations: 'which shapes the tables have had',
  plan_freshness: 'worked out from what is logged',
  plan_part: 'the parts of a plan, made by a trigger from the whole',
  request: 'answers kept for a time so that nothing is done twice',
  seal: 'the seals of the log',
  sealed_line: 'the seals of the log',
  session: 'who is signed in where; kept apart for a time, and shown to that person',
  size_day: 'how large the database was; measured, not done by anybody',
  sign_in_try: 'tries at the door, forgotten within the day',
};

/** Columns that no line holds: what is worked out from others, or is too long and kept whole elsewhere. */
export const unread: readonly string[] = [
  'item.due_on',
  'item.due_state',
  'item.due_holds_through',
  'item.due_known',
  'item.place',
  'model.place',
  'rule.place',
  'pack_plan.plan',
  'plan_improvement.plan',
  'tour_plan.plan',
  'tour.written',
];

/** Columns of which a line holds the SHA-256 alone. */
export const digested: readonly string[] = ['password_hash', 'calendar_feed.token_hash', 'report_file.bytes'];
