package withy.app;

/** Told of better builds while a use case works, and asked whether to stop. */
public interface Progress {

    /** True = stop and answer with the best so far. Asked often. */
    boolean stopped();

    /**
     * A better build.
     *
     * @param weightG its weight, g
     * @param priceMinor what the customer would pay, minor units
     */
    void better(double weightG, long priceMinor);

    /** Runs to the end and tells nobody. */
    Progress NONE = new Progress() {
        @Override
        public boolean stopped() {
            return false;
        }

        @Override
        public void better(double weightG, long priceMinor) {
            // nobody listens
        }
    };
}
