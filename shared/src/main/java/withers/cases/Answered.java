package withers.cases;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.Optional;
import withers.id.OrganisationId;

/**
 * What the organisation that acts told about a follow-up on the sheet of its list. All of it
 * together is its identity: the same told twice is told once. People's details don't belong here.
 *
 * <p>The natural order is the one in which answers about a follow-up count: by the day, on one day
 * by what came of it (see {@link Outcome}), then by all the rest, so that it does not matter in
 * which order sheets came back.
 *
 * @param day when that came of it: as stated, else the day of the list
 * @param listed the day that the run of the list had judged; empty when the sheet did not tell
 * @param outcome what came of it; empty when only something else is told
 * @param again the day on which the follow-up is to be asked again, after {@code day}
 * @param channel how the client wishes to be reached
 * @param by in which role, or empty; never a person's name
 */
public record Answered(
    CaseKey key,
    LocalDate day,
    Optional<LocalDate> listed,
    Optional<Outcome> outcome,
    Optional<LocalDate> again,
    Optional<Channel> channel,
    String by)
    implements CaseEvent, Comparable<Answered> {

  private static final Comparator<Answered> ORDER =
      Comparator.comparing(Answered::day)
          .thenComparing(one -> one.outcome.map(Enum::ordinal).orElse(-1))
          .thenComparing(one -> one.again.orElse(LocalDate.MIN))
          .thenComparing(one -> one.channel.map(Enum::ordinal).orElse(-1))
          .thenComparing(Answered::by)
          .thenComparing(one -> one.listed.orElse(LocalDate.MIN))
          .thenComparing(Answered::key);

  /** Who says so. */
  public OrganisationId author() {
    return key.actor();
  }

  /** The day up to which it knew what records say: that of the list, else its own. */
  public LocalDate knew() {
    return listed.orElse(day);
  }

  /** The same of a follow-up that goes by another key now. */
  public Answered under(CaseKey current) {
    return new Answered(current, day, listed, outcome, again, channel, by);
  }

  @Override
  public int compareTo(Answered other) {
    return ORDER.compare(this, other);
  }
}
