package withers.workspace;

import java.util.Optional;

/**
 * What {@code withers.yaml} states about mail.
 *
 * @param reminderDays days after which a list is sent again although nothing on it is new, from 1
 * @param details whether lists stand in mails
 * @param overview whether the coordinator is sent the overview
 * @param largestKib the largest mail that carries its list, in units of 1024 bytes, from 1; a
 *     larger one is a summary
 * @param server who takes the mails; empty when none are sent
 */
public record MailSettings(
    int reminderDays,
    Details details,
    Overview overview,
    int largestKib,
    Optional<MailServer> server) {

  public static final int DEFAULT_REMINDER_DAYS = 28;

  /** Ten megabytes: our judgement. Many servers take twice as much, few take less. */
  public static final int DEFAULT_LARGEST_KIB = 10_240;

  /** Those of a workspace that states none. */
  public static final MailSettings DEFAULT =
      new MailSettings(
          DEFAULT_REMINDER_DAYS,
          Details.INCLUDED,
          Overview.MAILED,
          DEFAULT_LARGEST_KIB,
          Optional.empty());

  /** Whether details of clients and animals go out by mail. */
  public enum Details {
    /** A mail holds its list. */
    INCLUDED,
    /** A mail says how much there is to do, and that the list is to be fetched. */
    LEFT_OUT
  }

  /** What becomes of the overview. */
  public enum Overview {
    /** It is the coordinator's mail, with the coordinator's own list if there is one. */
    MAILED,
    /** It lies beside the lists, and nowhere else. */
    KEPT
  }
}
