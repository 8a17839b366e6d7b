package withers.ingest.change;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;
import withers.chip.OneSlip;
import withers.fact.Fact;
import withers.fact.Slot;
import withers.fact.Subject;
import withers.fact.WithdrawalReason;
import withers.id.SourceId;
import withers.ingest.change.ModelExport.Row;
import withers.ingest.change.ModelExport.Said;
import withers.log.LogSnapshot;

/**
 * What a reader finds in effect: for each record the statements of each export date, where a date
 * that says what the date before said is left out. On one date absence gives way: a subject that
 * the record speaks of on that date, itself or by a link or in a row that can't be read, is listed,
 * and a cancellation by absence falls.
 */
public final class InEffect {

  private static final Fact STILL_LISTED = new Fact.Withdrawn(WithdrawalReason.STILL_LISTED);

  private InEffect() {}

  /** Reads it from a log, as a reader does. */
  public static SortedMap<String, SortedMap<LocalDate, Set<Said>>> on(
      LogSnapshot snapshot, SourceId source) {
    Map<String, Map<LocalDate, Set<Said>>> written = new HashMap<>();
    new SourceLog(snapshot, source)
        .replay(
            (e, marker) ->
                written
                    .computeIfAbsent(e.origin().key().value(), k -> new HashMap<>())
                    .computeIfAbsent(e.origin().exportDate(), d -> new HashSet<>())
                    .add(new Said(e.subject(), e.origin().slot(), e.date(), e.fact())));
    return of(written);
  }

  private static SortedMap<String, SortedMap<LocalDate, Set<Said>>> of(
      Map<String, Map<LocalDate, Set<Said>>> written) {
    SortedMap<String, SortedMap<LocalDate, Set<Said>>> inEffect = new TreeMap<>();
    written.forEach(
        (key, byDate) -> {
          NavigableMap<LocalDate, Set<Said>> dates = new TreeMap<>();
          byDate.forEach((date, said) -> dates.put(date, presenceFirst(said)));
          inEffect.put(key, collapsed(dates));
        });
    return inEffect;
  }

  private static Set<Said> presenceFirst(Set<Said> said) {
    Set<Subject> present = new HashSet<>();
    for (Said one : said) {
      if (!isDerived(one.fact()) || one.fact().equals(STILL_LISTED)) {
        present.add(one.subject());
      }
    }
    Set<Said> kept = new HashSet<>(said);
    kept.removeIf(one -> one.fact().equals(STILL_LISTED));
    kept.removeIf(one -> isAbsence(one.fact()) && present.contains(one.subject()));
    return kept;
  }

  private static SortedMap<LocalDate, Set<Said>> collapsed(
      NavigableMap<LocalDate, Set<Said>> dates) {
    SortedMap<LocalDate, Set<Said>> kept = new TreeMap<>();
    Set<Said> last = Set.of();
    for (Map.Entry<LocalDate, Set<Said>> entry : dates.entrySet()) {
      if (!entry.getValue().equals(last) || isManifold(last)) {
        kept.put(entry.getKey(), entry.getValue());
      }
      last = entry.getValue();
    }
    return kept;
  }

  private record SlotOfSubject(Subject subject, Slot slot) {}

  private static boolean isManifold(Set<Said> said) {
    Set<SlotOfSubject> filled = new HashSet<>();
    return said.stream()
        .filter(one -> !isDerived(one.fact()))
        .anyMatch(one -> !filled.add(new SlotOfSubject(one.subject(), one.slot())));
  }

  private static boolean isAbsence(Fact fact) {
    return fact instanceof Fact.NoLongerListed
        || fact.equals(new Fact.Withdrawn(WithdrawalReason.CANCELLED));
  }

  private static boolean isDerived(Fact fact) {
    return fact instanceof Fact.NoLongerListed || fact instanceof Fact.Withdrawn;
  }

  /** Works it out from the exports themselves, by the sentences of docs/decisions. */
  static SortedMap<String, SortedMap<LocalDate, Set<Said>>> specified(
      List<ModelExport> exports, Disappearance disappearance) {
    Map<String, Map<LocalDate, Set<Said>>> written = new HashMap<>();
    Set<String> keys = new TreeSet<>();
    exports.forEach(export -> export.rows().forEach(row -> keys.add(row.key())));
    for (String key : keys) {
      written.put(key, record(key, exports, disappearance));
    }
    return of(written);
  }

  private static Map<LocalDate, Set<Said>> record(
      String key, List<ModelExport> exports, Disappearance disappearance) {
    Map<LocalDate, Set<Said>> written = new HashMap<>();
    Map<Subject, Set<Slot>> formers = new HashMap<>();
    List<LocalDate> ownDays = new ArrayList<>();
    for (LocalDate date : dates(exports)) {
      List<ModelExport> ofDate = exports.stream().filter(e -> e.date().equals(date)).toList();
      Set<Set<Said>> contents = new HashSet<>();
      ofDate.forEach(e -> e.rowsOf(key).forEach(row -> contents.add(said(row))));
      Set<Said> group = new HashSet<>();
      for (Set<Said> content : contents) {
        group.addAll(content);
        owed(content, formers, disappearance, group);
      }
      if (contents.isEmpty() && isMissed(ofDate, ownDays)) {
        absent(formers, disappearance, group);
      }
      if (!group.isEmpty()) {
        written.put(date, group);
      }
      for (Set<Said> content : contents) {
        for (Said one : content) {
          formers.computeIfAbsent(one.subject(), s -> new HashSet<>()).add(one.slot());
          if (one.slot() == Slot.INTAKE) {
            one.date().ifPresent(ownDays::add);
          }
        }
      }
    }
    return written;
  }

  private static Set<LocalDate> dates(List<ModelExport> exports) {
    Set<LocalDate> dates = new TreeSet<>();
    exports.forEach(export -> dates.add(export.date()));
    return dates;
  }

  private static boolean isMissed(List<ModelExport> ofDate, List<LocalDate> ownDays) {
    return ofDate.stream().anyMatch(e -> e.isFull() || ownDays.stream().anyMatch(e::holds));
  }

  private static final Said UNREADABLE =
      new Said(
          new Subject.Damaged("", List.of()),
          Slot.ANIMAL,
          Optional.empty(),
          new Fact.Described(
              withers.fact.Species.UNSTATED, Optional.empty(), Optional.empty(), Optional.empty()));

  private static Set<Said> said(Row row) {
    return row.isUnreadable() ? Set.of(UNREADABLE) : Set.copyOf(row.said());
  }

  private static void absent(
      Map<Subject, Set<Slot>> formers, Disappearance disappearance, Set<Said> group) {
    formers.forEach((subject, slots) -> gone(subject, slots, disappearance, group));
  }

  private static void gone(
      Subject subject, Set<Slot> slots, Disappearance disappearance, Set<Said> group) {
    group.add(unlisted(subject));
    if (disappearance == Disappearance.CANCELLED) {
      slots.forEach(slot -> group.add(withdrawn(subject, slot, WithdrawalReason.CANCELLED)));
    }
  }

  private static void owed(
      Set<Said> content,
      Map<Subject, Set<Slot>> formers,
      Disappearance disappearance,
      Set<Said> group) {
    formers.forEach(
        (subject, slots) -> {
          if (content.contains(UNREADABLE)) {
            group.add(withdrawn(subject, Slot.LISTING, WithdrawalReason.STILL_LISTED));
          } else {
            owed(content, subject, slots, disappearance, group);
          }
        });
  }

  private static void owed(
      Set<Said> content,
      Subject former,
      Set<Slot> slots,
      Disappearance disappearance,
      Set<Said> group) {
    boolean linked =
        content.stream()
            .anyMatch(
                one ->
                    one.fact() instanceof Fact.Linked link
                        && former.equals(new Subject.Animal(link.animalId())));
    Set<Slot> filled = new HashSet<>();
    content.stream()
        .filter(one -> linked || one.subject().equals(former))
        .forEach(one -> filled.add(one.slot()));
    if (!filled.isEmpty()) {
      slots.stream()
          .filter(slot -> slot.nature() == Slot.Nature.CORRECTS && !filled.contains(slot))
          .forEach(slot -> group.add(withdrawn(former, slot, WithdrawalReason.SLOT_EMPTIED)));
      if (linked) {
        group.add(withdrawn(former, Slot.LISTING, WithdrawalReason.STILL_LISTED));
      }
      return;
    }
    gone(former, slots, disappearance, group);
    if (former instanceof Subject.Damaged || isOneSlipAway(former, content)) {
      slots.forEach(slot -> group.add(withdrawn(former, slot, WithdrawalReason.NUMBER_CORRECTED)));
    }
  }

  private static boolean isOneSlipAway(Subject former, Set<Said> content) {
    return content.stream()
        .map(one -> one.subject().chip().orElse(null))
        .filter(Objects::nonNull)
        .anyMatch(now -> former.chip().filter(old -> OneSlip.between(old, now)).isPresent());
  }

  private static Said unlisted(Subject subject) {
    return new Said(subject, Slot.LISTING, Optional.empty(), new Fact.NoLongerListed());
  }

  private static Said withdrawn(Subject subject, Slot slot, WithdrawalReason reason) {
    return new Said(subject, slot, Optional.empty(), new Fact.Withdrawn(reason));
  }
}
