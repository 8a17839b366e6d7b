package withers.report.list;

import java.util.List;
import java.util.Optional;
import withers.fact.Species;
import withers.finding.Finding;
import withers.organisation.Organisation;
import withers.organisation.OrganisationKind;
import withers.report.text.OneLine;
import withers.report.text.Texts;
import withers.report.text.Words;

/** How people, organisations and animals are named within a sentence. */
final class Phrases {

  private final Texts texts;

  Phrases(Texts texts) {
    this.texts = texts;
  }

  String who(Seen seen) {
    if (seen instanceof Seen.Client client) {
      return client(client);
    }
    if (seen instanceof Seen.Masked masked) {
      return texts.say("who.masked." + heldAs(masked.holder().kind()), masked.holder().name());
    }
    if (seen instanceof Seen.Member member) {
      return member(member);
    }
    return texts.say(nameless(seen));
  }

  private static String nameless(Seen seen) {
    if (seen instanceof Seen.Removed) {
      return "who.removed";
    }
    return seen instanceof Seen.Outside ? "who.outside" : "who.nobody";
  }

  private String client(Seen.Client client) {
    String name = OneLine.of(client.contact().fullName());
    return name.isEmpty() ? texts.say("who.client.unnamed") : name;
  }

  private String member(Seen.Member member) {
    String name = member.organisation().name();
    return member.self() ? texts.say("who.self", name) : name;
  }

  private static String heldAs(OrganisationKind kind) {
    return switch (kind) {
      case REGISTRY, CLINIC, SHELTER, SELLER -> Words.of(kind);
      case COORDINATOR, OTHER -> "other";
    };
  }

  /** Several in one phrase, each once. */
  String all(List<Seen> several) {
    return texts.together(several.stream().map(this::who).distinct().toList());
  }

  String organisations(List<Organisation> several) {
    return texts.together(several.stream().map(Organisation::name).distinct().toList());
  }

  /** The animal's name and kind, as a heading. */
  String title(Finding finding) {
    if (finding.stock().isPresent()) {
      return texts.say("stock.title", Numbers.spoken(finding.stock().get().range().first()));
    }
    return title(finding.animalName(), finding.species());
  }

  String title(Optional<String> name, Species kind) {
    String species = species(kind);
    return shown(name)
        .map(one -> texts.say("animal.title.named", one, species))
        .orElseGet(() -> texts.say("animal.title.unnamed", species));
  }

  /** The animal where a sentence begins. */
  String opening(Finding finding) {
    return opening(finding.animalName(), finding.species());
  }

  String opening(Optional<String> name, Species kind) {
    return shown(name).orElseGet(() -> texts.say("animal.start", species(kind)));
  }

  /** The animal within a sentence. */
  String inside(Finding finding) {
    return shown(finding.animalName())
        .orElseGet(() -> texts.say("animal.inside", species(finding.species())));
  }

  private static Optional<String> shown(Optional<String> name) {
    return name.map(OneLine::of).filter(one -> !one.isEmpty());
  }

  private String species(Species kind) {
    return texts.say("species." + Words.of(kind));
  }
}
