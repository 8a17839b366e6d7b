package withers.workspace;

import java.util.Optional;

/**
 * What {@code withers.yaml} states about being watched, while the schedule is up.
 *
 * @param address where to be asked: a name or number of this machine
 * @param port where to be asked, 1 to 65535; empty for nowhere
 * @param operator the mail address that is told of jobs that fail
 */
public record WatchSettings(String address, Optional<Integer> port, Optional<String> operator) {

  /** This machine alone (RFC 1122, 3.2.1.3). */
  public static final String LOOPBACK = "127.0.0.1";

  /** Of a workspace that states nothing. */
  public static final WatchSettings NONE =
      new WatchSettings(LOOPBACK, Optional.empty(), Optional.empty());
}
