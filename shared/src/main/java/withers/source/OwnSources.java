package withers.source;

import java.util.Set;
import withers.id.SourceId;

/** Names of what Withers itself writes to the log: no source of exports can have one of them. */
public final class OwnSources {

  /** Answers of registries, recorded by hand. */
  public static final SourceId LOOK_UPS = new SourceId("look-ups");

  /** The runs, and what they change in the life of follow-ups. */
  public static final SourceId FOLLOW_UPS = new SourceId("follow-ups");

  /** What became of lists that were sent by mail. */
  public static final SourceId DELIVERIES = new SourceId("deliveries");

  /** What people settled about follow-ups. */
  public static final SourceId SETTLEMENTS = new SourceId("settlements");

  /** What organisations answered on the sheets of their lists. */
  public static final SourceId ANSWERS = new SourceId("answers");

  /** Who saw, and who had removed, what is held on people. */
  public static final SourceId AUDIT = new SourceId("audit");

  private static final Set<SourceId> ALL =
      Set.of(LOOK_UPS, FOLLOW_UPS, DELIVERIES, SETTLEMENTS, ANSWERS, AUDIT);

  private OwnSources() {}

  /** Whether a source of exports can't have this name. */
  public static boolean isTaken(SourceId id) {
    return ALL.contains(id);
  }
}
