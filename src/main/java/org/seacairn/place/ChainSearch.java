package org.seacairn.place;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import org.seacairn.InputException;
import org.seacairn.Progress;

/**
 * The best chains of modules between the two stones of a corridor.
 *
 * <p>A chain is a sequence of scored cells in which every step, from the first stone over the modules to
 * the second, lies within the gap limits on the ground (held a millimetre inside, see {@link OffsetRuns}),
 * each cell strictly further along the axis than the one before, and any two modules at least
 * {@link Gaps#apartM} from each other. Of each number of modules the one with the highest total score is
 * taken; of equal ones that whose first differing module lies less far along the axis (in millimetres),
 * then further north, then further west.
 *
 * <p>Neighbours in a chain stand apart by their gap; for others it needs saying. If modules i and j, not
 * neighbours, of a chain of k stood nearer than {@code apart}, then by the triangle inequality the stones
 * would be less than (k - 1) x gap-max + apart from each other. Open ground needs no more than k modules
 * for stones over k x gap-max apart, so there the fewest never come too near each other: it takes a
 * detour, or more modules than needed. And on a straight axis it takes a corridor wider than
 * sqrt(gap-min² - (apart / 2)²), since one of two steps that gain less than apart must lead that far aside.
 */
public final class ChainSearch {
    private static final int MORE = 2;
    /** How many modules beyond the fewest are tried where all chains double back on themselves. */
    private static final int MOST_MORE = 6;
    /** Of the search for modules apart; a run that used them all up, about 1.4 km by 0.8 km, took 0.7 s as a whole. */
    private static final int MOST_STEPS = 20_000;

    private final Corridor corridor;
    private final Gaps rules;
    private final int threads;
    private final Progress progress;

    private ChainSearch(Corridor corridor, Gaps rules, int threads, Progress progress) {
        this.corridor = corridor;
        this.rules = rules;
        this.threads = threads;
        this.progress = progress;
    }

    /**
     * What was found.
     *
     * @param chains the best of each number of modules tried for which there is one, fewest first
     * @param undecided numbers of modules for which the search gave up before it found a chain or proved
     *     that there is none
     * @param unbridged why there is no chain at all; present exactly where {@code chains} is empty and the
     *     gaps alone cannot be kept
     */
    public record Result(List<Chain> chains, List<Integer> undecided, Optional<Unbridged> unbridged) {
        /** The fewest modules; empty without a chain. */
        public OptionalInt fewest() {
            return chains.stream().mapToInt(c -> c.modules().size()).findFirst();
        }
    }

    /**
     * The chain of the fewest modules, and those of one and of two more.
     *
     * @param threads at least 1; the result is the same for any number
     * @param progress counts cells as often as they are looked at from another number of modules
     */
    public static Result fewest(Corridor corridor, Gaps rules, int threads, Progress progress) {
        return new ChainSearch(corridor, rules, threads, progress).run(OptionalInt.empty());
    }

    static Result fewest(Corridor corridor, Gaps rules, int threads) {
        return fewest(corridor, rules, threads, Progress.NONE);
    }

    /**
     * The best chain of exactly so many modules. Where there is none, the chains that there are: of every smaller
     * number from the fewest on, or, where the fewest are already more, those of {@link #fewest}.
     *
     * @param modules at least 0
     * @throws InputException if so many modules do not fit the corridor at their distance apart, whatever the ground
     */
    public static Result exactly(Corridor corridor, Gaps rules, int modules, int threads, Progress progress) {
        int most = mostThatFit(corridor, rules.apartM());
        if (modules > most) {
            throw new InputException(String.format(Locale.ROOT, "%d modules are more than the corridor from \"%s\" to \"%s\" can hold:"
                    + " no more than %d stand %.0f m apart in it; ask for fewer", modules, corridor.axis().from().name(),
                    corridor.axis().to().name(), most, rules.apartM()));
        }
        return new ChainSearch(corridor, rules, threads, progress).run(OptionalInt.of(modules));
    }

    static Result exactly(Corridor corridor, Gaps rules, int modules, int threads) {
        return exactly(corridor, rules, modules, threads, Progress.NONE);
    }

    /**
     * A bound on how many modules stand apart in the corridor: circles of half that distance about them do not
     * overlap, and all lie within the half-width and half that distance of the axis.
     */
    static int mostThatFit(Corridor corridor, double apartM) {
        double reach = corridor.halfWidthM() + apartM / 2;
        double area = 2 * reach * corridor.axis().lengthM() + Math.PI * reach * reach;
        return (int) Math.min(ChainLevels.MOST_MODULES, area / (Math.PI * apartM * apartM / 4));
    }

    private Result run(OptionalInt modules) {
        try (Chunks chunks = new Chunks(threads)) {
            ChainGraph graph = new ChainGraph(corridor, rules, chunks);
            ChainLevels levels = new ChainLevels(graph, chunks, progress);
            if (levels.fewest() == 0 && !graph.joined()) {
                return new Result(List.of(), List.of(), Optional.of(Unbridged.of(graph, levels)));
            }
            return modules.isPresent() ? exactly(graph, levels, modules.getAsInt()) : fewest(graph, levels);
        }
    }

    private Result fewest(ChainGraph graph, ChainLevels levels) {
        List<Chain> chains = new ArrayList<>();
        List<Integer> undecided = new ArrayList<>();
        int fewest = -1;
        int computed = -1;
        for (int n = graph.joined() ? 0 : levels.fewest();
                n <= (fewest < 0 ? levels.fewest() + MOST_MORE : fewest + MORE); n++) {
            int extra = n - levels.fewest();
            if (levels.fewest() > 0 && extra > computed) {
                // As a rule the first try is the fewest, and all three come from one computation.
                computed = Math.max(extra, graph.joined() ? MORE - levels.fewest() : chains.isEmpty() ? extra + MORE : extra);
                levels.compute(computed);
            }
            add(graph, levels, n, chains, undecided);
            fewest = chains.isEmpty() ? -1 : chains.get(0).modules().size();
        }
        return new Result(List.copyOf(chains), List.copyOf(undecided), Optional.empty());
    }

    private Result exactly(ChainGraph graph, ChainLevels levels, int modules) {
        List<Chain> chains = new ArrayList<>();
        List<Integer> undecided = new ArrayList<>();
        if (levels.fewest() > 0 && modules >= levels.fewest()) {
            levels.compute(modules - levels.fewest());
        }
        add(graph, levels, modules, chains, undecided);
        if (chains.isEmpty() && modules < levels.fewest()) {
            return fewest(graph, levels);
        }
        for (int n = 0; n < modules && (chains.isEmpty() || chains.get(0).modules().size() < modules); n++) {
            add(graph, levels, n, chains, undecided);
        }
        return new Result(List.copyOf(chains), List.copyOf(undecided), Optional.empty());
    }

    private void add(ChainGraph graph, ChainLevels levels, int modules, List<Chain> chains, List<Integer> undecided) {
        if (modules == 0) {
            if (graph.joined()) {
                chains.add(Chain.of(corridor, new int[0], 0, 0));
            }
            return;
        }
        if (levels.fewest() == 0 || modules < levels.fewest()) {
            return;
        }
        ApartSearch.Found found = ApartSearch.best(graph, levels, modules, MOST_STEPS);
        if (found.slots() != null) {
            chains.add(Chain.of(corridor, found.slots(), found.total(), found.bound()));
        } else if (found.bound() >= 0) {
            undecided.add(modules);
        }
    }
}
