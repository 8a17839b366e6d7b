package withers.cases;

import java.util.List;
import java.util.Optional;
import withers.chip.ChipNumber;
import withers.contact.ContactRef;
import withers.fact.Party;
import withers.id.OrganisationId;
import withers.id.RecordKey;
import withers.id.SourceId;

/** What can be settled about a follow-up. */
public sealed interface Settlement {

  /**
   * Somebody looked into it: all is as it should be, or shall rest. It holds for what was known:
   * the rest is what the finding said.
   *
   * @param custodian who had the animal
   * @param registered whom registrations named
   * @param told what else the finding told apart: fields that differ, a number as it was written
   */
  record RightAsItIs(Party custodian, List<Registration> registered, List<String> told)
      implements Settlement {
    public RightAsItIs {
      registered = List.copyOf(registered);
      told = List.copyOf(told);
    }
  }

  /** How two contacts stand to each other. */
  record OfPeople(Client one, Client other, Relation relation) implements Settlement {}

  /**
   * Records that contradict each other describe one animal after all.
   *
   * @param descriptions digests of what they state; another description is not settled by this
   */
  record OneAnimal(ChipNumber number, List<String> descriptions) implements Settlement {
    public OneAnimal {
      descriptions = List.copyOf(descriptions);
    }
  }

  /** A record's number is mistaken: what it says of that number is said of another animal. */
  record MistakenNumber(ChipNumber number, SourceId source, RecordKey record)
      implements Settlement {}

  /** It is to rest for a while: until the end of what was settled. */
  record ForLater() implements Settlement {}

  /** Whatever was settled about the follow-up before is not. */
  record TakenBack() implements Settlement {}

  /** A registration that a finding spoke of. */
  record Registration(ChipNumber chip, OrganisationId registry, Party primary) {}

  /**
   * A contact, and the source's own client if it tells: then all versions of that client are meant.
   */
  record Client(ContactRef reference, SourceId source, Optional<String> clientId) {}

  /** How two people stand to each other. */
  enum Relation {
    SAME_PERSON,
    SAME_HOUSEHOLD,
    DIFFERENT_PEOPLE
  }
}
