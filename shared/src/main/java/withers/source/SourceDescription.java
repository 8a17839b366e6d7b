package withers.source;

import withers.id.OrganisationId;
import withers.id.SourceId;

/** A source as the log knows it: whose records they are, of what kind, and what they cover. */
public record SourceDescription(
    SourceId id, OrganisationId organisation, SourceKind kind, Coverage coverage) {}
