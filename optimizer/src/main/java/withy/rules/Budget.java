package withy.rules;

import withy.rod.Rod;

/** The price the customer pays, tax included, stays within the budget. */
final class Budget implements Rule {
    @Override
    public String code() {
        return "budget";
    }

    @Override
    public void onRod(Rod rod, Bench bench) {
        Long budget = rod.brief().budgetMinor();
        if (budget == null) {
            bench.notApplicable("price");
        } else {
            bench.atMost("price", rod.figures().priceMinor(), budget, Unit.MINOR, "");
        }
    }
}
