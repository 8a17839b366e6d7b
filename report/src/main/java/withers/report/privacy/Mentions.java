package withers.report.privacy;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import withers.chip.ChipNumber;
import withers.codec.Streams;
import withers.contact.ContactRef;
import withers.contact.ContactVault.RecordName;
import withers.fact.ChipEvent;
import withers.fact.Party;
import withers.fact.Subject;
import withers.log.LogSnapshot;
import withers.log.LogStream;

/** Finds the statements on the log that name somebody. */
public final class Mentions {
  private static final Comparator<Mention> ORDER =
      Comparator.comparing(Mention::exportDate)
          .thenComparing(mention -> mention.record().source())
          .thenComparing(mention -> mention.record().key().value())
          .thenComparing(Mention::about)
          .thenComparing(Mention::role);

  private Mentions() {}

  /** Each once, in order of the exports; replays the whole log. */
  public static List<Mention> read(LogSnapshot log, Set<ContactRef> references) {
    List<Mention> found = new ArrayList<>();
    for (LogStream<ChipEvent> stream : List.of(Streams.CHIPS, Streams.SUPPLY, Streams.UNPLACED)) {
      for (int partition = 0; partition < stream.partitions(); partition++) {
        log.replay(stream, partition, (event, marker) -> add(event, references, found));
      }
    }
    return found.stream().distinct().sorted(ORDER).toList();
  }

  /** The chips of which statements name them. */
  public static Set<ChipNumber> numbers(LogSnapshot log, Set<ContactRef> references) {
    Set<ChipNumber> numbers = new HashSet<>();
    for (int partition = 0; partition < Streams.CHIPS.partitions(); partition++) {
      log.<ChipEvent>replay(
          Streams.CHIPS,
          partition,
          (event, marker) -> {
            List<Mention> found = new ArrayList<>();
            add(event, references, found);
            if (!found.isEmpty()) {
              event.subject().chip().ifPresent(numbers::add);
            }
          });
    }
    return numbers;
  }

  private static void add(ChipEvent event, Set<ContactRef> references, List<Mention> found) {
    PartyRole.of(event.fact())
        .forEach(
            role -> {
              if (role.party() instanceof Party.Contact contact
                  && references.contains(contact.reference())) {
                found.add(mention(event, contact.reference(), role.word()));
              }
            });
  }

  private static Mention mention(ChipEvent event, ContactRef reference, String role) {
    return new Mention(
        reference,
        new RecordName(event.origin().source(), event.origin().key()),
        about(event.subject()),
        role,
        event.origin().exportDate());
  }

  private static String about(Subject subject) {
    if (subject instanceof Subject.Animal animal) {
      return "animal " + animal.animalId();
    }
    return subject.chip().map(ChipNumber::display).orElse("no single number");
  }
}
