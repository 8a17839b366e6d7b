package withers.ingest.translate;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import withers.chip.ChipNumberReader;
import withers.contact.Contact;
import withers.contact.ContactRef;
import withers.fact.ChipEvent;
import withers.fact.ContactRole;
import withers.fact.Fact;
import withers.fact.Party;
import withers.fact.Subject;
import withers.id.OrganisationId;
import withers.ingest.csv.CsvFile;
import withers.ingest.file.ExportFile;
import withers.ingest.profile.Profiles;
import withers.ingest.profile.SourceProfile;
import withers.ingest.rows.Row;
import withers.organisation.Directory;
import withers.organisation.Organisation;
import withers.organisation.OrganisationKind;

/**
 * A file read by a profile, each row as one line: what it states, in a form that a registrar could
 * read, or why it is rejected. People stand as {@code <name>}.
 */
final class Reading {

  private static final Directory DIRECTORY =
      Directory.of(
          List.of(
              new Organisation(
                  new OrganisationId("coast"),
                  "Coast",
                  OrganisationKind.OTHER,
                  List.of(),
                  Contact.NOBODY,
                  Optional.empty(),
                  List.of(),
                  Set.of(),
                  List.of())));
  private static final LocalDate EXPORT_DATE = LocalDate.of(2031, 2, 28);

  private final List<Contact> people = new ArrayList<>();
  private final SourceProfile profile;
  private final Path folder;

  Reading(Path folder, String profileText) {
    try {
      this.folder = folder;
      Files.writeString(
          folder.resolve("source.yaml"),
          """
          organisation: coast
          files: '*.csv'
          export-date: {from: command}
          extent: full
          coverage: {reach: whole}
          """
              + profileText);
      this.profile = Profiles.read(folder, DIRECTORY).all().get(0);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** What each row after the header says. */
  List<String> of(String... lines) {
    List<String> said = new ArrayList<>();
    translations(lines).forEach(translation -> said.add(text(translation)));
    return said;
  }

  List<Translation> translations(String... lines) {
    try {
      Path file = folder.resolve("export.csv");
      Files.writeString(file, String.join("\n", lines) + "\n");
      return translate(ExportFile.inspect(file, profile.format()));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private List<Translation> translate(ExportFile file) {
    List<Translation> translations = new ArrayList<>();
    try (CsvFile csv = CsvFile.open(file, profile.format(), profile.headers(), bytes -> {})) {
      Surroundings around =
          new Surroundings(EXPORT_DATE, 0, new ChipNumberReader(true), this::reference);
      RowTranslator translator = new RowTranslator(profile, csv.header(), around);
      for (Optional<Row> row = csv.next(); row.isPresent(); row = csv.next()) {
        translations.add(translator.translate(row.get()));
      }
    }
    return translations;
  }

  private ContactRef reference(Contact contact) {
    if (!people.contains(contact)) {
      people.add(contact);
    }
    return new ContactRef(0, 0, people.indexOf(contact));
  }

  private String text(Translation translation) {
    if (translation instanceof Translation.Rejected no) {
      String key = no.key().map(k -> k + ": ").orElse("");
      return key
          + no.reject().code()
          + " in \""
          + no.reject().column()
          + "\": "
          + no.reject().message();
    }
    Translation.Stated stated = (Translation.Stated) translation;
    return stated.key()
        + ": "
        + String.join("; ", stated.statements().stream().map(this::text).toList());
  }

  private String text(ChipEvent event) {
    return event.origin().slot()
        + " of "
        + text(event.subject())
        + event.date().map(day -> " on " + day).orElse("")
        + ": "
        + text(event.fact());
  }

  private static String text(Subject subject) {
    if (subject instanceof Subject.Damaged damaged) {
      return "'" + damaged.original() + "' " + damaged.candidates();
    }
    if (subject instanceof Subject.Animal animal) {
      return "animal " + animal.animalId();
    }
    return subject.chip().map(Object::toString).orElse("range");
  }

  private String text(Fact fact) {
    if (fact instanceof Fact.HandedOver moved) {
      return moved.basis() + " " + text(moved.giver()) + " -> " + text(moved.receiver());
    }
    if (fact instanceof Fact.Attended attended) {
      return "with " + text(attended.client());
    }
    if (fact instanceof Fact.Implanted implanted) {
      return "by " + text(implanted.implanter());
    }
    if (fact instanceof Fact.Found found) {
      return "found, with " + text(found.holder());
    }
    if (fact instanceof Fact.Lost lost) {
      return "lost, says " + text(lost.reporter());
    }
    if (fact instanceof Fact.Registered registered) {
      return text(registered);
    }
    if (fact instanceof Fact.Supplied supplied) {
      return "%s to %s for %s%s"
          .formatted(
              supplied.range().first(),
              supplied.range().last(),
              text(supplied.purchaser()),
              supplied.prepaid() ? ", prepaid" : "");
    }
    if (fact instanceof Fact.Described described) {
      return described.species()
          + described.name().map(name -> " " + name).orElse("")
          + described.sex().map(sex -> " " + sex).orElse("")
          + described.born().map(born -> " born " + born).orElse("");
    }
    return fact.toString();
  }

  private String text(Fact.Registered registered) {
    StringBuilder text = new StringBuilder(registered.account().orElse("no account"));
    for (ContactRole role : ContactRole.values()) {
      registered
          .contact(role)
          .ifPresent(party -> text.append(", ").append(role).append(' ').append(text(party)));
    }
    return text.toString();
  }

  private String text(Party party) {
    if (party instanceof Party.Contact contact) {
      String id = contact.clientId().map(client -> " (" + client + ")").orElse("");
      return "<" + people.get((int) contact.reference().low()).fullName() + ">" + id;
    }
    if (party instanceof Party.Organisation organisation) {
      return organisation.statedName();
    }
    return party instanceof Party.Own ? "us" : "nobody";
  }
}
