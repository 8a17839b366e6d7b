package withers.trace;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import withers.chip.ChipNumber;
import withers.chip.NumberRange;
import withers.fact.Species;
import withers.finding.Who;
import withers.history.Statement;
import withers.id.OrganisationId;

/**
 * What is known of a number. People appear as "a private person" only.
 *
 * @param number the number asked about
 * @param chips all chips of the animal, in natural order
 * @param steps what is in effect, in order of day; empty when nothing is known of the number
 * @param registrations live ones
 * @param doubts where the records contradict each other about who has it or whether it lives
 * @param call whom to call next; empty when no organisation can help
 * @param supplied ranges that the number was supplied in
 * @param oneSlipAway numbers that records know and that one slip of the hand turns into this one,
 *     in natural order; looked for only when nothing is known of the number itself
 * @param mayHold registries that may hold the number, in the order of their ids
 * @param isSilent whether records speak of it, and nothing is told of them but whom to call
 */
public record Trace(
    ChipNumber number,
    List<ChipNumber> chips,
    Species species,
    Optional<String> name,
    List<Step> steps,
    List<Registered> registrations,
    List<String> doubts,
    Optional<Call> call,
    List<Supply> supplied,
    List<ChipNumber> oneSlipAway,
    List<OrganisationId> mayHold,
    boolean isSilent) {

  public Trace {
    chips = List.copyOf(chips);
    steps = List.copyOf(steps);
    registrations = List.copyOf(registrations);
    doubts = List.copyOf(doubts);
    supplied = List.copyOf(supplied);
    oneSlipAway = List.copyOf(oneSlipAway);
    mayHold = List.copyOf(mayHold);
  }

  /** Of an animal that is marked as confidential: nothing, but whom to call. */
  static Trace silent(ChipNumber number, OrganisationId coordinator) {
    return new Trace(
        number,
        List.of(number),
        Species.UNSTATED,
        Optional.empty(),
        List.of(),
        List.of(),
        List.of(),
        Optional.of(new Call(coordinator, "it answers for this number itself")),
        List.of(),
        List.of(),
        List.of(),
        true);
  }

  /** Whether any record speaks of the number. */
  public boolean isKnown() {
    return isSilent || !steps.isEmpty();
  }

  /**
   * A statement in words.
   *
   * @param says what it says, without people's details
   * @param saidBy the organisation whose record says so
   */
  public record Step(Statement statement, String says, OrganisationId saidBy) {}

  /** A live registration. */
  public record Registered(ChipNumber chip, OrganisationId registry, LocalDate day, Who primary) {}

  /**
   * Whom to call.
   *
   * @param why the reason, as the end of a sentence
   */
  public record Call(OrganisationId organisation, String why) {}

  /** A range of numbers that somebody bought. */
  public record Supply(NumberRange range, Who purchaser, LocalDate day, boolean prepaid) {}
}
