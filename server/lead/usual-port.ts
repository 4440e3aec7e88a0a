/** Where a lead is called where nobody says another port. */
export const usualLeadPort = 4712;
