package withers.matching.form;

/**
 * An e-mail address. The text form never shows it.
 *
 * @param mailbox what stands before the at sign, folded, without a tag
 * @param domain folded
 * @param tag what stands between + and @, folded, or empty
 * @param letters the mailbox's letters alone: what is left of {@code j.smith77} is {@code jsmith}
 */
public record Email(String mailbox, String domain, String tag, String letters) {

  /** Whether mail to both reaches one mailbox: a tag and capitals make no other. */
  public boolean isSame(Email other) {
    return mailbox.equals(other.mailbox) && domain.equals(other.domain);
  }

  @Override
  public String toString() {
    return "Email[details withheld]";
  }
}
