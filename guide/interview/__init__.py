"""The interview: answers with their certainty, what to ask next, understanding replies, and the job file."""
