package withers.ingest.dirty;

import java.lang.reflect.RecordComponent;
import java.util.Arrays;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import withers.chip.ChipNumber;
import withers.contact.Contact;
import withers.contact.ContactRef;
import withers.contact.ContactVault;
import withers.fact.ChipEvent;
import withers.fact.Fact;
import withers.fact.Party;
import withers.fact.Subject;
import withers.yaml.Choices;

/** Says in words what a row states. What is empty is left out. */
final class FactText {

  private final ContactVault vault;

  FactText(ContactVault vault) {
    this.vault = vault;
  }

  /** One line for each subject with its record key, and one for each statement about it. */
  List<String> lines(List<ChipEvent> row) {
    Map<String, List<ChipEvent>> bySubject =
        row.stream()
            .collect(Collectors.groupingBy(this::subject, TreeMap::new, Collectors.toList()));
    return bySubject.entrySet().stream()
        .flatMap(one -> Stream.concat(Stream.of(one.getKey()), statements(one.getValue()).stream()))
        .toList();
  }

  /** Of a row that can't be read, the log notes that its record is there. */
  private static boolean isListedOnly(ChipEvent event) {
    return event.subject() instanceof Subject.Damaged damaged && damaged.original().isEmpty();
  }

  private List<String> statements(List<ChipEvent> events) {
    return events.stream()
        .filter(event -> !isListedOnly(event))
        .sorted(Comparator.comparing(event -> event.origin().slot()))
        .map(event -> "  " + statement(event))
        .toList();
  }

  private String statement(ChipEvent event) {
    String date = event.date().map(day -> " " + day).orElse("");
    String details = fields((Record) event.fact());
    return words(event.fact().getClass().getSimpleName())
        + date
        + (details.isEmpty() ? "" : ": " + details);
  }

  private String subject(ChipEvent event) {
    String key = "key " + quoted(event.origin().key().value()) + ", ";
    if (isListedOnly(event)) {
      return key + "listed, what it said before stands";
    }
    Subject subject = event.subject();
    if (subject instanceof Subject.Chip chip) {
      return key + "chip " + chip.number().display();
    }
    if (subject instanceof Subject.Damaged damaged) {
      return key + "damaged number " + quoted(damaged.original()) + candidates(damaged);
    }
    return subject instanceof Subject.Animal animal
        ? key + "animal " + quoted(animal.animalId())
        : key + "supply";
  }

  private static String candidates(Subject.Damaged damaged) {
    return damaged.candidates().isEmpty()
        ? ""
        : damaged.candidates().stream()
            .map(ChipNumber::display)
            .collect(Collectors.joining(" or ", ", perhaps ", ""));
  }

  private String fields(Record fact) {
    return Arrays.stream(fact.getClass().getRecordComponents())
        .map(component -> field(component, fact))
        .filter(text -> !text.isEmpty())
        .collect(Collectors.joining(", "));
  }

  private String field(RecordComponent component, Record holder) {
    try {
      var accessor = component.getAccessor();
      accessor.setAccessible(true);
      String value = value(accessor.invoke(holder));
      return value.isEmpty() ? "" : words(component.getName()) + " " + value;
    } catch (ReflectiveOperationException e) {
      throw new IllegalStateException(e);
    }
  }

  private String value(Object value) {
    if (value instanceof Optional<?> optional) {
      return optional.map(this::value).orElse("");
    }
    if (value instanceof Collection<?> several) {
      return several.stream().map(this::value).collect(Collectors.joining(" and "));
    }
    if (value instanceof Map<?, ?> map) {
      return map.entrySet().stream()
          .map(e -> value(e.getKey()) + " " + value(e.getValue()))
          .sorted()
          .collect(Collectors.joining(", "));
    }
    return single(value);
  }

  private String single(Object value) {
    if (value instanceof Party party) {
      return party(party);
    }
    if (value instanceof Enum<?> word) {
      return Choices.name(word);
    }
    if (value instanceof ChipNumber number) {
      return number.display();
    }
    if (value instanceof String text) {
      return text.isEmpty() ? "" : quoted(text);
    }
    return value instanceof Record nested && !(value instanceof Fact)
        ? fields(nested)
        : String.valueOf(value);
  }

  private String party(Party party) {
    if (party instanceof Party.Contact contact) {
      return "(%s%s)"
          .formatted(
              contact.clientId().map(id -> "id " + quoted(id) + ", ").orElse(""),
              details(contact.reference()));
    }
    if (party instanceof Party.Organisation organisation) {
      return "organisation " + quoted(organisation.statedName());
    }
    return party instanceof Party.Own ? "the source itself" : "";
  }

  private String details(ContactRef reference) {
    Contact contact =
        vault.find(reference).orElseThrow(() -> new AssertionError("A contact is not kept"));
    return fields(contact);
  }

  private static String words(String name) {
    return name.replaceAll("(?<=[a-z])(?=[A-Z])", " ").toLowerCase(Locale.ROOT);
  }

  /** As on one line: what can't be seen is written out. */
  private static String quoted(String text) {
    return text.chars()
        .mapToObj(
            c ->
                switch (c) {
                  case '\n' -> "\\n";
                  case '\r' -> "\\r";
                  case '\t' -> "\\t";
                  default ->
                      Character.isISOControl(c) || c == 0xFEFF
                          ? "\\u%04X".formatted(c)
                          : String.valueOf((char) c);
                })
        .collect(Collectors.joining("", "\"", "\""));
  }
}
