// Takes: panel.csv of a bench. Gives: what a panel could tell, and the panel a plan needs.
// Never words a verdict, never uses a normal approximation.
// Imports findings/, statistics/ and model/ only.
export { type PanelPlan, panelTests, USUAL_PLAN } from './panel-tests.ts';
