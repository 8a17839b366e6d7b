package withers.sqlite;

import java.sql.SQLException;
import java.sql.Statement;

/** A file of an older format on the connection that will use it. */
record OpenOutdated(SqliteFile file, Statement statement, int from) implements Upgrading.Outdated {

  @Override
  public String what() {
    return file.format().what();
  }

  @Override
  public int to() {
    return file.format().version();
  }

  @Override
  public boolean isStill() {
    return file.trying(() -> SqliteFile.version(statement) < to());
  }

  @Override
  public void bringUp() {
    file.trying(this::built);
  }

  private boolean built() throws SQLException {
    file.build(statement);
    return true;
  }

  @Override
  public RuntimeException refusal() {
    return new Problems(file.path(), file.format())
        .unavailable(
            "Expected the %s of format "
                + to()
                + ", but found format "
                + from
                + ", which an older program wrote; a command on its workspace brings it up: %s");
  }
}
