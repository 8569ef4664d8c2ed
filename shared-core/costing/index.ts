export type { CostLine, CostPlan } from './cost-plan.ts';
export { type CostFacts, planCost } from './plan-cost.ts';
export { findPurchases, type Goods, type Purchase } from './purchases.ts';
export { type Quote, quoteOf, type QuoteKind, type QuoteLine } from './quote.ts';
export { explainCost, explainCostLine, type CostWorking, type CostWorkings } from './explain-cost.ts';
