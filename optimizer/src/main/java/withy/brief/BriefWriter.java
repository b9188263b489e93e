package withy.brief;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import org.jspecify.annotations.Nullable;
import withy.brief.Brief.Handle;
import withy.brief.Brief.Leader;
import withy.brief.Brief.Look;
import withy.brief.Brief.PartWish;
import withy.brief.Brief.Reel;
import withy.brief.Brief.Wish;
import withy.catalog.Lab;

/** Writes a resolved brief as JSON, every value in the field that ends in its unit; {@link BriefReader} reads it back to an equal brief. */
public final class BriefWriter {
    private static final JsonNodeFactory NODES = JsonNodeFactory.instance;

    private BriefWriter() {}

    /** The brief with the sentences about its defaults. */
    public static ObjectNode write(Brief brief) {
        ObjectNode root = NODES.objectNode();
        root.put("schema", BriefReader.SCHEMA);
        root.put("name", brief.name());
        root.put("customer", brief.customer());
        root.put("rodType", Words.of(brief.rodType()));
        root.put("hands", brief.twoHanded() ? 2 : 1);
        root.put("fishedFrom", Words.of(brief.fishedFrom()));
        root.putObject("lengthMm").put("min", brief.lengthMinMm()).put("max", brief.lengthMaxMm());
        root.putObject("pieces").put("min", brief.piecesMin()).put("max", brief.piecesMax());
        root.put("packedMaxMm", brief.packedMaxMm());
        tackle(root, brief);
        root.put("largestFishKg", brief.largestFishKg());
        root.put("landing", Words.of(brief.landing()));
        root.put("durabilityClass", brief.durabilityClass());
        root.put("corrosionClass", brief.corrosionClass());
        root.putObject("hand").put("palmMm", brief.palmMm());
        root.putObject("reachMm").put("min", brief.reachMinMm()).put("max", brief.reachMaxMm());
        handle(root.putObject("handle"), brief.handle());
        look(root.putObject("look"), brief.look());
        root.put("budgetMinor", brief.budgetMinor());
        root.put("wantedBy", brief.wantedBy() == null ? null : brief.wantedBy().toString());
        bargain(root, brief);
        parts(root.putArray("insisted"), brief.insisted());
        brief.owned().forEach(root.putArray("owned")::add);
        parts(root.putArray("refused"), brief.refused());
        root.put("counterweightAsked", brief.counterweightAsked());
        root.put("guidesByClearance", brief.guidesByClearance());
        brief.defaultsUsed().forEach(root.putArray("defaultsUsed")::add);
        return root;
    }

    private static void tackle(ObjectNode root, Brief brief) {
        root.putObject("lure")
                .put("lightestG", brief.lure().lightestG())
                .put("usualG", brief.lure().usualG())
                .put("heaviestG", brief.lure().heaviestG());
        ObjectNode line = root.putObject("line")
                .put("kind", Words.of(brief.line().kind()))
                .put("diameterMm", brief.line().diameterMm())
                .put("strengthKg", brief.line().strengthKg());
        if (brief.line().gauge() != null) {
            line.put("gauge", brief.line().gauge());
        }
        Leader leader = brief.leader();
        if (leader == null) {
            root.putNull("leader");
        } else {
            root.putObject("leader")
                    .put("strengthKg", leader.strengthKg())
                    .put("diameterMm", leader.diameterMm())
                    .put("knot", Words.of(leader.knot()))
                    .put("castThroughRings", leader.castThroughRings());
        }
        root.put("dragKg", brief.dragKg());
        Reel reel = brief.reel();
        root.putObject("reel")
                .put("size", reel.sizeClass())
                .put("footLengthMm", reel.footLengthMm())
                .put("footThicknessMm", reel.footThicknessMm())
                .put("footWidthMm", reel.footWidthMm())
                .put("massG", reel.massG())
                .put("centreOffsetMm", reel.centreOffsetMm())
                .put("lipDiameterMm", reel.lipDiameterMm())
                .put("stemHeightMm", reel.stemHeightMm());
    }

    private static void handle(ObjectNode node, Handle handle) {
        wish(node, "form", handle.form());
        wish(node, "foreGrip", handle.foreGrip());
        wish(node, "trigger", handle.trigger());
        wish(node, "movingHood", handle.movingHood());
        wish(node, "keeper", handle.keeper());
        wish(node, "action", handle.action());
        node.put("mixedGrips", handle.mixedGrips());
    }

    private static void wish(ObjectNode node, String key, @Nullable Wish<?> wish) {
        if (wish == null) {
            node.putNull(key);
            return;
        }
        ObjectNode told = node.putObject(key);
        if (wish.value() instanceof Boolean flag) {
            told.put("value", flag);
        } else if (wish.value() instanceof Enum<?> constant) {
            told.put("value", Words.of(constant));
        } else {
            throw new IllegalArgumentException("no way to write the wish " + key + ": " + wish.value());
        }
        told.put("need", wish.hard() ? "hard" : "nice");
        if (!wish.hard()) {
            told.put("steps", wish.steps());
        }
    }

    private static void look(ObjectNode node, Look look) {
        node.put("theme", look.theme().isEmpty() ? null : look.theme());
        ArrayNode liked = node.putArray("likedMaterials");
        look.likedMaterials().forEach(material -> liked.add(material.word()));
        ArrayNode refused = node.putArray("refusedMaterials");
        look.refusedMaterials().forEach(material -> refused.add(material.word()));
        ArrayNode colours = node.putArray("likedColours");
        for (Lab colour : look.likedColours()) {
            colours.addArray().add(colour.l()).add(colour.a()).add(colour.b());
        }
        node.put("inscription", look.inscription());
    }

    private static void bargain(ObjectNode root, Brief brief) {
        ObjectNode priorities = root.putObject("priorities");
        for (Objective objective : Objective.values()) {
            priorities.put(objective.key(), brief.priority(objective));
        }
        root.putObject("balanceZone").put("nearMm", brief.zoneNearMm()).put("farMm", brief.zoneFarMm());
        root.putObject("steps")
                .put("weightG", brief.step(Objective.WEIGHT))
                .put("balanceNmm", brief.step(Objective.BALANCE))
                .put("swingWeightKgM2", brief.step(Objective.SWING_WEIGHT))
                .put("priceMinor", brief.step(Objective.PRICE))
                .put("stylePoints", brief.step(Objective.STYLE))
                .put("durabilityClasses", brief.step(Objective.DURABILITY));
    }

    private static void parts(ArrayNode array, List<PartWish> parts) {
        for (PartWish part : parts) {
            if (part.hard()) {
                array.add(part.partId());
            } else {
                array.addObject().put("part", part.partId()).put("need", "nice").put("steps", part.steps());
            }
        }
    }
}
