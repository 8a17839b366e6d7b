package withers.reconcile.cli;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import withers.chip.ChipNumber;
import withers.codec.Streams;
import withers.contact.ContactRef;
import withers.custody.Parties;
import withers.fact.ChipEvent;
import withers.fact.Party;
import withers.log.LogSnapshot;

/**
 * Pairs of contacts, by their references.
 *
 * @param candidates both named for one chip: they may be one person
 * @param random of any two chips: hardly ever one person
 */
record ContactPairs(List<Two> candidates, List<Two> random) {

  /** Two different contacts. */
  record Two(ContactRef one, ContactRef other) {
    void addTo(Collection<ContactRef> references) {
      references.add(one);
      references.add(other);
    }
  }

  /** More say no more, and take time. */
  private static final int MOST_PAIRS = 200_000;

  /** A number of which more contacts are told is no usual animal's. */
  private static final int MOST_CONTACTS = 10;

  /** The same log gives the same pairs. */
  private static final long SEED = 1;

  /**
   * Reads the log.
   *
   * @param partitionRead told of every partition
   */
  static ContactPairs read(LogSnapshot log, Runnable partitionRead) {
    List<Two> candidates = new ArrayList<>();
    List<ContactRef> all = new ArrayList<>();
    for (int partition = 0; partition < Streams.CHIPS.partitions(); partition++) {
      for (Set<ContactRef> contacts : byChip(log, partition)) {
        add(List.copyOf(contacts), candidates, all);
      }
      partitionRead.run();
    }
    return new ContactPairs(candidates, random(all));
  }

  private static Collection<Set<ContactRef>> byChip(LogSnapshot log, int partition) {
    Map<ChipNumber, Set<ContactRef>> contacts = new TreeMap<>();
    log.replay(
        Streams.CHIPS,
        partition,
        (event, marker) -> event.subject().chip().ifPresent(chip -> keep(event, chip, contacts)));
    return contacts.values();
  }

  private static void keep(
      ChipEvent event, ChipNumber chip, Map<ChipNumber, Set<ContactRef>> contacts) {
    Parties.of(event.fact())
        .filter(Party.Contact.class::isInstance)
        .map(party -> ((Party.Contact) party).reference())
        .forEach(reference -> contacts.computeIfAbsent(chip, c -> new TreeSet<>()).add(reference));
  }

  private static void add(List<ContactRef> contacts, List<Two> candidates, List<ContactRef> all) {
    if (contacts.size() > MOST_CONTACTS || candidates.size() >= MOST_PAIRS) {
      return;
    }
    all.addAll(contacts);
    for (int i = 0; i < contacts.size(); i++) {
      for (int j = i + 1; j < contacts.size(); j++) {
        candidates.add(new Two(contacts.get(i), contacts.get(j)));
      }
    }
  }

  /** Contacts of one chip stand together: what lies far apart is of two chips. */
  private static List<Two> random(List<ContactRef> all) {
    List<Two> pairs = new ArrayList<>();
    Random dice = new Random(SEED);
    for (int i = 0; i < MOST_PAIRS && all.size() > 2 * MOST_CONTACTS; i++) {
      int one = dice.nextInt(all.size());
      int apart = MOST_CONTACTS + dice.nextInt(all.size() - 2 * MOST_CONTACTS);
      pairs.add(new Two(all.get(one), all.get((one + apart) % all.size())));
    }
    return pairs;
  }
}
