package withers.report.publish;

import static org.assertj.core.api.Assertions.assertThat;
import static withers.report.Coast.BEACON;
import static withers.report.Coast.CLINIC;
import static withers.report.Coast.COORDINATOR;
import static withers.report.Coast.SHELTER;
import static withers.report.Coast.TIDELINE;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import org.apache.james.mime4j.dom.Entity;
import org.apache.james.mime4j.dom.Multipart;
import org.apache.james.mime4j.dom.SingleBody;
import org.apache.james.mime4j.message.DefaultMessageBuilder;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import withers.contact.Contact;
import withers.finding.Band;
import withers.finding.Evidence.Part;
import withers.finding.FindingKind;
import withers.finding.RunResult;
import withers.finding.Who;
import withers.mailing.Mailings;
import withers.report.Coast;
import withers.report.FindingStory;
import withers.report.Imports;
import withers.report.Samples;
import withers.report.overview.RunFigures;
import withers.report.overview.Unnumbered;
import withers.workspace.Workspace;

@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class PublisherTest {
  private static final Instant NOW = Instant.parse("2026-03-01T06:30:00Z");

  @TempDir private Path folder;
  @TempDir private Path aside;

  private final Samples samples = new Samples();
  private final Coast coast = samples.coast;

  @BeforeEach
  void makes_a_workspace() throws IOException {
    Coast.writeWorkspace(folder);
  }

  @Test
  void writes_lists_overview_and_mail_for_their_owner_only() throws IOException {
    Published published = publish(samples.run());

    assertThat(files())
        .containsExactly(
            "lists/2026-03-01-0123abcd/dune-shelter/list.csv",
            "lists/2026-03-01-0123abcd/dune-shelter/list.html",
            "lists/2026-03-01-0123abcd/dune-shelter/list.xlsx",
            "lists/2026-03-01-0123abcd/harbour-vets/list.csv",
            "lists/2026-03-01-0123abcd/harbour-vets/list.html",
            "lists/2026-03-01-0123abcd/harbour-vets/list.xlsx",
            "lists/2026-03-01-0123abcd/overview.html",
            "lists/2026-03-01-0123abcd/overview.json",
            "lists/2026-03-01-0123abcd/trend-changes.png",
            "lists/2026-03-01-0123abcd/trend-open.png",
            "outbox/2026-03-01-0123abcd/coast-network.eml",
            "outbox/2026-03-01-0123abcd/harbour-vets.eml");
    for (Path path : everything()) {
      assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(path)))
          .as(path.toString())
          .isEqualTo(Files.isDirectory(path) ? "rwx------" : "rw-------");
    }
    assertThat(published.mailed()).containsExactly(COORDINATOR, CLINIC);
    assertThat(published.mails().orElseThrow().unaddressed())
        .map(organisation -> organisation.id())
        .containsExactly(SHELTER);
  }

  @Test
  void publishing_a_run_again_replaces_what_it_made_before() throws IOException {
    publish(samples.run());
    List<String> before = files();
    Path stale = folder.resolve("lists/2026-03-01-0123abcd/gone/list.html");
    Files.createDirectories(stale.getParent());
    Files.writeString(stale, "of an earlier attempt");
    Files.createDirectories(folder.resolve("lists/.2026-03-01-0123abcd.new/half"));
    Files.createDirectories(folder.resolve("outbox/.2026-03-01-0123abcd.old"));

    publish(samples.run());

    assertThat(files()).isEqualTo(before);
    assertThat(everything())
        .map(Path::toString)
        .noneMatch(path -> path.matches(".*\\.(new|old).*"));
  }

  /**
   * Whatever one organisation's export says about a person stands in that organisation's list,
   * page, sheet and mail, and in nothing that anybody else is given.
   */
  @Test
  void a_person_planted_in_one_export_is_seen_in_that_organisation_s_list_and_nowhere_else()
      throws Exception {
    Contact canary =
        new Contact(
            "Canary Quillfeather",
            "",
            "",
            List.of("+1 212 555 0199"),
            List.of("canary@quill.example.org"),
            List.of("77 Feather Row"),
            "99077",
            "Plumehaven",
            "",
            "");
    Who planted = coast.person(CLINIC, canary);
    Who other = coast.person(TIDELINE, Coast.contact("Jonas Abel", "+1 212 555 0161"));

    publish(everyRoleFor(planted, other));

    List<String> signs =
        List.of("Canary", "Quillfeather", "555 0199", "5550199", "Feather Row", "Plumehaven");
    for (Path path : everything()) {
      if (Files.isRegularFile(path)) {
        String shown = String.join("\n", shown(path));
        boolean own = path.toString().contains("harbour-vets");
        for (String sign : signs) {
          assertThat(shown.contains(sign))
              .as("%s in %s", sign, path)
              .isEqualTo(own && expected(sign, path));
        }
        assertThat(path.toString()).doesNotContainIgnoringCase("canary");
      }
    }
  }

  /** Only pages have numbers to dial. */
  private static boolean expected(String sign, Path path) {
    return !sign.equals("5550199") || path.toString().matches(".*\\.(html|eml)");
  }

  /** The planted person in every role, in findings of every kind and of every organisation. */
  private static RunResult everyRoleFor(Who planted, Who other) {
    List<FindingStory> stories = new ArrayList<>();
    int chip = 2000;
    for (FindingKind kind : FindingKind.values()) {
      for (var actor : List.of(CLINIC, SHELTER, TIDELINE, BEACON)) {
        stories.add(story(kind, actor, chip++).with(planted).registered(TIDELINE, other));
        stories.add(story(kind, actor, chip++).with(other).registered(BEACON, planted));
      }
    }
    for (FindingStory story : stories) {
      for (Part part : Part.values()) {
        story.because(part, "2025-06-01", CLINIC, "P-17", planted);
      }
    }
    return Coast.run(stories.toArray(FindingStory[]::new));
  }

  private static FindingStory story(FindingKind kind, withers.id.OrganisationId actor, int chip) {
    FindingStory story =
        switch (kind) {
          case NUMBER_DAMAGED -> FindingStory.damaged(actor, "999O12").readable(chip).placed(chip);
          case STOCK_UNACCOUNTED -> FindingStory.unaccounted(actor, chip, 10, 5).placed(chip);
          default -> FindingStory.of(kind, actor, chip);
        };
    return story.band(Band.values()[chip % Band.values().length]);
  }

  private Published publish(RunResult run) {
    Workspace workspace = Workspace.open(folder, Clock.fixed(NOW, ZoneOffset.UTC));
    return new Publisher(workspace, coast.vault, Mailings.NONE)
        .publish(
            run,
            List.of(Imports.of(CLINIC, "2026-02-28", 0)),
            Unnumbered.NONE,
            List.of(RunFigures.of(Coast.run())));
  }

  private List<String> files() throws IOException {
    return everything().stream()
        .filter(Files::isRegularFile)
        .map(path -> folder.relativize(path).toString())
        .toList();
  }

  /** All that was published, folders included. */
  private List<Path> everything() throws IOException {
    try (Stream<Path> lists = Files.walk(folder.resolve("lists"));
        Stream<Path> outbox = Files.walk(folder.resolve("outbox"))) {
      return Stream.concat(lists, outbox).sorted().toList();
    }
  }

  /** All texts that a file shows: archives unpacked, mail decoded. */
  private List<String> shown(Path path) throws Exception {
    byte[] bytes = Files.readAllBytes(path);
    if (path.toString().endsWith(".xlsx")) {
      return unpacked(bytes);
    }
    if (path.toString().endsWith(".eml")) {
      return decoded(new DefaultMessageBuilder().parseMessage(new ByteArrayInputStream(bytes)));
    }
    return List.of(text(bytes));
  }

  /** By the archive's directory: not every writer says an entry's size before its content. */
  private List<String> unpacked(byte[] archive) throws IOException {
    List<String> texts = new ArrayList<>();
    Path copy = Files.write(aside.resolve("archive.zip"), archive);
    try (ZipFile zip = new ZipFile(copy.toFile())) {
      for (ZipEntry entry : Collections.list(zip.entries())) {
        texts.add(entry.getName());
        texts.add(text(zip.getInputStream(entry).readAllBytes()));
      }
    }
    return texts;
  }

  private List<String> decoded(Entity entity) throws IOException {
    List<String> texts = new ArrayList<>();
    entity.getHeader().forEach(field -> texts.add(field.getName() + ": " + field.getBody()));
    if (entity.getBody() instanceof Multipart parts) {
      for (Entity part : parts.getBodyParts()) {
        texts.addAll(decoded(part));
      }
    } else {
      byte[] bytes = ((SingleBody) entity.getBody()).getInputStream().readAllBytes();
      boolean workbook = entity.getMimeType().startsWith("application/");
      texts.addAll(workbook ? unpacked(bytes) : List.of(text(bytes)));
    }
    return texts;
  }

  private static String text(byte[] bytes) {
    return new String(bytes, StandardCharsets.UTF_8);
  }
}
