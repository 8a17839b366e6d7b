package withers.run;

import java.util.ArrayList;
import java.util.List;
import withers.audit.AuditEvent;
import withers.audit.Confidential;
import withers.codec.Streams;
import withers.custody.Discretion;
import withers.log.LogSnapshot;

/** Reads from the log what nothing is told of. */
public final class DiscretionReader {
  private DiscretionReader() {}

  /** What counts now, for runs that look back as well: what is told is told today. */
  public static Discretion read(LogSnapshot log) {
    return Discretion.of(written(log));
  }

  /** All marks and lifts, in their order. */
  public static List<Confidential> written(LogSnapshot log) {
    List<Confidential> written = new ArrayList<>();
    log.<AuditEvent>replay(
        Streams.AUDIT,
        0,
        (event, marker) -> {
          if (event instanceof Confidential confidential) {
            written.add(confidential);
          }
        });
    return written;
  }
}
