package withers.finding;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import withers.cases.Anchor;
import withers.cases.CaseKey;
import withers.chip.ChipNumber;
import withers.fact.Species;
import withers.id.OrganisationId;
import withers.id.RecordKey;

/**
 * Whether an animal's registered contact is its keeper: the records fit one person as well as two.
 * Nothing is wrong as far as anybody can tell, so this is no finding and no follow-up; somebody who
 * knows the people may tell at a glance.
 *
 * @param chips all of the animal's chips, in natural order
 * @param animalName the animal's name in the asked organisation's records, else in anybody's
 * @param asked the organisation whose record names the keeper
 * @param record that record
 * @param keeper who has the animal, by that record
 * @param since the day from which on
 * @param registered the registrations in question
 */
public record OpenQuestion(
    List<ChipNumber> chips,
    Species species,
    Optional<String> animalName,
    OrganisationId asked,
    RecordKey record,
    Who.Person keeper,
    LocalDate since,
    List<Finding.Registration> registered) {

  /** What a question is called where follow-ups are named by their kind. */
  public static final String WORD = "cannot-tell";

  public OpenQuestion {
    chips = List.copyOf(chips);
    registered = List.copyOf(registered);
  }

  /** The identity by which it can be referred to; no follow-up has it. */
  public CaseKey key() {
    return new CaseKey(WORD, new Anchor.Chip(chips.get(0)), asked, record.value());
  }
}
