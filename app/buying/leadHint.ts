/** Said where somebody writes how long a purchase takes. */
export const LEAD_HINT = "In whole days from the order. With only the likely one, low is 0.7 of it and high twice.";
