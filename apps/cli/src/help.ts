export const HELP = `panewright: from measured openings to a cut-ready set of window panels.

  panewright plan JOB.json --out DIR     all sheets, cut files and plan.json
      --catalogue FILE                   the shop's catalogue (else the invented one a shop begins with)
      --seed N                           of the lay's search (1)
      --paper letter|a4|a3|tabloid       of the patterns (letter for jobs in inches, a4 for mm)
      --paper 36in|914mm                 a roll of that width: each pattern is one long page
      --printer ID                       a printer of the catalogue: its paper and correction
      --correction XxY                   nominal over measured, across and along the paper, as 1.002x0.998
      --printer-test                     a page to measure the printer by
      --language en|de|es                (the shop's; the quote is in the customer's)
      --large                            large type on work order, install sheet and lists
      --copies N                         of each template (one full page)
      --labels NAME                      labels with QR codes on a sheet of labels, as "99 × 38 mm, 2 × 7"
      --sewn  --label-start N (1)  --label-copies N (1)
      --address URL                      of the page: the labels' codes open the panel there
      --hpgl                             plotter files: pen 1 draws, pen 2 cuts, inner before outer
      --knife-offset MM (0)  --overcut MM (0)
      --offer fabric=ID                  an alternative with its own price in the quote; may be given again. Also
                                         finish=BINDING, hem=MM, finish=hotCut, steel=ID, fastener=ID, magnets=OUT/IN
                                         (the job's own alternatives)
      --date YYYY-MM-DD                  printed on the sheets (today)
      --revision TEXT                    printed on the sheets
      --json                             prints the plan itself
  panewright check JOB.json              what is wrong or doubtful, and what can hurt someone
      --catalogue FILE  --seed N  --json
  panewright hold JOB.json               every hold point: its margin, how it gives first, and at which wind
      --opening ID                       one opening, and which magnets would hold it
      --catalogue FILE  --json
  panewright pull CASES.json             force between magnets, ideal model
      --json
  panewright pack INSTANCE.json          lays pieces on a strip
      --seconds S (10)  --seed N (1)  --json
      --evaluations N                    of each of two searches, instead of seconds: same lay on any machine
  panewright labels CATALOGUE.json --out FILE.pdf --labels NAME
                                         labels with QR codes for the offcuts kept in stock
      --offcut ID                        one by its id; may be given again (all that are not yet cut)
      --units mm|in (mm)  --label-start N (1)  --language en|de|es  --date YYYY-MM-DD  --json
  panewright trace PHOTO...              outline of a traced film, from photos with the reference sheets
      --tape M.C-M.C=MM                  a taped distance between two marker corners; may be given again
      --ruler XxY                        the printed bars as ruled, mm
      --line darkest|inner|outer         which of two parallel lines is meant
      --taps "N:X,Y X,Y X,Y"             points on the line in photo N, px, in order: the ink between is followed
      --paper A4|Letter (A4)  --json
  panewright outline FILE                outlines in a drawing (DXF, SVG) or a table of points (CSV)
      --unit mm|cm|m|in|ft|px|pt         where the file does not say
      --points trace|corners (trace)     of a table
      --json
  panewright call OPERATION [INPUT.json] any operation, JSON in and out
      --server ADDRESS                   for those that keep jobs (http://127.0.0.1:4750)
  panewright operations                  their names

A file named - is standard input. Exit codes: 0 fine, 2 the input cannot be used, 3 no answer to what was asked (check:
part of the job cannot be made as it stands; hold: a panel would come off in the wind asked; trace: no outline; a save: saved elsewhere since), 70 a fault of this program.
`;
