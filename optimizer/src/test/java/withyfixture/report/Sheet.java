package withyfixture.report;

import java.sql.Connection;
import withyfixture.search.planning.PlannedSeat;

/** Wrong on purpose: a report asks no database and knows no planning class. */
public record Sheet(Connection connection, PlannedSeat seat) {}
