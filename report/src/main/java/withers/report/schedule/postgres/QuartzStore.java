package withers.report.schedule.postgres;

import java.sql.Connection;
import java.sql.SQLException;
import java.util.Map;
import org.quartz.impl.jdbcjobstore.JobStoreTX;
import org.quartz.impl.jdbcjobstore.PostgreSQLDelegate;
import org.quartz.utils.ConnectionProvider;
import org.quartz.utils.DBConnectionManager;

/** Quartz's clustered store in the database: who is woken, and who takes over from whom. */
public final class QuartzStore {
  private static final String NAME = "withers";
  private static final int CHECKS_IN_A_LEASE = 4;

  private QuartzStore() {}

  /** The properties that have Quartz keep its wakes there. */
  public static Map<String, String> in(JobDatabase database) {
    DBConnectionManager.getInstance().addConnectionProvider(NAME, new Connections(database));
    long check = Math.max(1, database.lease().toMillis() / CHECKS_IN_A_LEASE);
    return Map.of(
        "org.quartz.scheduler.instanceId",
        "AUTO",
        "org.quartz.jobStore.class",
        JobStoreTX.class.getName(),
        "org.quartz.jobStore.driverDelegateClass",
        PostgreSQLDelegate.class.getName(),
        "org.quartz.jobStore.dataSource",
        NAME,
        "org.quartz.jobStore.isClustered",
        "true",
        "org.quartz.jobStore.clusterCheckinInterval",
        String.valueOf(check));
  }

  private record Connections(JobDatabase database) implements ConnectionProvider {
    @Override
    public Connection getConnection() throws SQLException {
      return database.connection();
    }

    @Override
    public void shutdown() {
      // Each connection is closed by whoever asked for it.
    }

    @Override
    public void initialize() {
      // The database is open.
    }
  }
}
