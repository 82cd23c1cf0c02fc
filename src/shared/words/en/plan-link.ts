/** What is wrong with the link or the code of a plan, and what to do. */
export const PLAN_LINK = {
  cut: 'The end of this link is missing: scan the code again, or copy the whole link.',
  altered: 'This link was altered on the way: scan the code again, or ask for the link once more.',
  planTooLarge:
    'The plan in this link is larger than any plan may be, so it was not opened: ask for a new link.',
  tooLarge: 'The plan is too large for a link: give it fewer gestures.',
  empty: 'This link holds no plan: scan the code again, or copy the link.',
  newer:
    'This plan was made by a newer Movewright: open the app once with a network, take the update, and scan again.',
  oneTooMuch: 'One gesture alone is too much for a code: shorten its words, or share the link.',
}
