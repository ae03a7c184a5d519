package dev.waterjet.program;

import java.util.List;

/** Copies a program and replaces the text of its cutting blocks. */
final class ProgramRewriter {

    private final PartProgram program;
    private final ProgramBlocks blocks;
    private final String text;
    private final double minimumPieceM;
    private final double dwellS;
    private final StringBuilder out;
    private final BlockSplitter splitter;
    private int copied;

    ProgramRewriter(PartProgram program, double minimumPieceM, double dwellS) {
        this.program = program;
        this.blocks = program.blocks();
        this.text = program.unrolledText();
        this.minimumPieceM = minimumPieceM;
        this.dwellS = dwellS;
        this.out = new StringBuilder(text.length() * 2);
        this.splitter = new BlockSplitter(program);
    }

    String rewrite(List<CutFeeds> feeds) {
        for (int c = 0; c < feeds.size(); c++) {
            ProgramCut cut = program.cuts().get(c);
            BlockStretches pieces = new BlockStretches(feeds.get(c), cut);
            dwell(cut);
            for (int i = 0; i < cut.size(); i++) {
                int block = cut.firstBlock() + i;
                double resolution = blocks.unitM(block)
                        * Math.pow(
                                10, -ProgramNumbers.decimals(program.codes(), blocks.has(block, ProgramBlocks.INCH)));
                pieces.take(blocks.length(block), Math.max(minimumPieceM, 4 * resolution));
                copyTo(blocks.lineFrom[block]);
                splitter.write(block, pieces, out);
                copied = blocks.lineTo[block];
            }
        }
        copyTo(text.length());
        return out.toString();
    }

    private void dwell(ProgramCut cut) {
        int at = cut.jetOn().lineTo();
        boolean movesAtOnce = blocks.lineTo[cut.firstBlock()] == at;
        boolean isMovingPierce = cut.purpose(0) == ProgramCut.Purpose.PIERCE;
        if (dwellS == 0 || cut.dwell().isPresent() || movesAtOnce || isMovingPierce) {
            return;
        }
        String words = ProgramNumbers.dwell(
                program.codes().dwell(), dwellS, splitter.blankAt(blocks.lineTo[cut.firstBlock()]));
        if (!words.isEmpty()) {
            copyTo(at);
            out.append(splitter.lineEnding(at)).append(words);
        }
    }

    private void copyTo(int offset) {
        out.append(text, copied, Math.max(copied, offset));
        copied = Math.max(copied, offset);
    }
}
