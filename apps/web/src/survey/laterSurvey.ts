// What an opening that is not measured by its sides needs: a file of script of its own, fetched for such an opening.
export { MarksTable } from './MarksTable.tsx';
export { OutlineFile } from './OutlineFile.tsx';
export { SurveyDrawing } from './SurveyDrawing.tsx';
